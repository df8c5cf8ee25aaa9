import pg from "pg";
import { keepLog } from "./keep-log";
import { migrate } from "./migrate";
import type { Home } from "./open-home";
import { endRotation, isRotating, patientKey } from "./patient-key";
import { raiseWall } from "./raise-wall";

/**
 * Brings an opened home's database up to date, its log out of the application's hands and the wall before its rows, and ends a rotation of
 * the patient key that was cut short. Answers what was applied.
 */
export async function readyDatabase(home: Home): Promise<string[]> {
  const applied = await migrate(home.url);
  await keepLog(home);
  await raiseWall(home);
  if (await isRotating(home.folder)) {
    await endRotation(home.folder, await fingerprintIn(home.url));
    home.key = await patientKey(home.folder);
  }
  return applied;
}

async function fingerprintIn(url: string): Promise<string | null> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    const { rows } = await client.query<{ value: string }>(
      "select value from settings where key = 'patient key fingerprint'",
    );
    return rows[0]?.value ?? null;
  } finally {
    await client.end();
  }
}
