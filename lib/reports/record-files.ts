/** Endings of the files that can hold records. */
export const recordFileEndings: readonly string[] = [".csv", ".xlsx", ".json", ".ndjson"];
