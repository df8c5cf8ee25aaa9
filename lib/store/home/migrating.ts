/** Advisory lock of the one process that migrates; any number that nothing else of the project locks. */
export const MIGRATING = 20_261_101;

/** Advisory lock of the transaction of a migration, with which PostgreSQL goes on though its process was killed. */
export const SCRIPT_RUNS = 20_261_102;
