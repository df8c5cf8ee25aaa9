import pg from "pg";
import { HomeTrouble } from "./home-trouble";
import { keepLog } from "./keep-log";
import { migrate } from "./migrate";
import type { Home } from "./open-home";
import { endRotation, isRotating, keyFingerprint, patientKey } from "./patient-key";
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

/**
 * Several processes have one key (CANAL_AUDIT_PATIENT_KEY, or the home they share): whoever comes with another would not recognise
 * patients, and does not start.
 * @throws HomeTrouble where the records were read with another key
 */
export async function refuseOtherKey(home: Pick<Home, "url" | "key">): Promise<void> {
  const kept = await fingerprintIn(home.url);
  if (kept === null || kept === keyFingerprint(home.key)) return;
  throw new HomeTrouble(
    "The patient key is not the one these records were read with: put the right key back (the home's file patient-key, or CANAL_AUDIT_PATIENT_KEY), or patients will not be recognised.",
  );
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
