import { join } from "node:path";
import { homeFolder } from "./home-folder";
import { HomeTrouble } from "./home-trouble";
import { readSecret, secretFile } from "./secret-file";

const FILE = "patient-key";
const BYTES = 32;

/**
 * The 32-byte key that turns patient references into hashes: CANAL_AUDIT_PATIENT_KEY (64 hexadecimal
 * digits or base64) where it is set, else the home's own. The database never holds it.
 * @throws HomeTrouble where there is none, or it is not 32 bytes.
 */
export async function patientKey(folder = homeFolder()): Promise<Buffer> {
  const given = process.env.CANAL_AUDIT_PATIENT_KEY?.trim();
  if (given) {
    return (
      keyBytes(given) ??
      trouble(
        "CANAL_AUDIT_PATIENT_KEY is not a key of 32 bytes: give 64 hexadecimal digits or the same in base64.",
      )
    );
  }
  const file = join(folder, FILE);
  const kept = await readSecret(file);
  if (kept === null) {
    return trouble(
      `The patient key ${file} is missing: put it back from your copy, since hashes made with a new one would match no earlier record.`,
    );
  }
  return (
    keyBytes(kept) ??
    trouble(
      `The patient key ${file} is damaged: put it back from your copy (64 hexadecimal digits).`,
    )
  );
}

/** Makes the home's key where it has none, and answers the key in force. */
export async function makePatientKey(folder: string): Promise<Buffer> {
  if (!process.env.CANAL_AUDIT_PATIENT_KEY?.trim()) await secretFile(folder, FILE);
  return patientKey(folder);
}

function keyBytes(text: string): Buffer | null {
  if (/^[0-9a-f]{64}$/i.test(text)) return Buffer.from(text, "hex");
  const bytes = Buffer.from(text, "base64");
  return bytes.length === BYTES && /^[\w+/-]{43}=?$/.test(text) ? bytes : null;
}

function trouble(sentence: string): never {
  throw new HomeTrouble(sentence);
}
