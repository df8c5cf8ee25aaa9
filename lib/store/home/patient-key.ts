import { createHmac, randomBytes } from "node:crypto";
import { rename, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { homeFolder } from "./home-folder";
import { HomeTrouble } from "./home-trouble";
import { readSecret, secretFile } from "./secret-file";

const FILE = "patient-key";
const NEXT = "patient-key.next";
const BYTES = 32;

/**
 * The key of 32 bytes, or after rotations the first and those that wrap it, one behind the other, that turns patient references into hashes: CANAL_AUDIT_PATIENT_KEY (64 hexadecimal
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

/** A key, or several with white space between. */
function keyBytes(text: string): Buffer | null {
  const keys = text.split(/\s+/).map(oneKey);
  return keys.some((key) => key === null)
    ? null
    : Buffer.concat(keys.filter((key) => key !== null));
}

function oneKey(text: string): Buffer | null {
  if (/^[0-9a-f]{64}$/i.test(text)) return Buffer.from(text, "hex");
  const bytes = Buffer.from(text, "base64");
  return bytes.length === BYTES && /^[\w+/-]{43}=?$/.test(text) ? bytes : null;
}

/** The key with a new one behind it, kept beside the key's file until the records are wrapped by it. */
export async function draftRotation(folder: string): Promise<Buffer> {
  if (process.env.CANAL_AUDIT_PATIENT_KEY?.trim())
    return trouble(
      "The patient key comes from CANAL_AUDIT_PATIENT_KEY, where the command cannot change it: keep it in the home's file patient-key, take the variable away, and repeat this.",
    );
  const key = Buffer.concat([await patientKey(folder), randomBytes(BYTES)]);
  const lines = Array.from({ length: key.length / BYTES }, (_, n) =>
    key.subarray(n * BYTES, (n + 1) * BYTES).toString("hex"),
  );
  await writeFile(join(folder, NEXT), `${lines.join("\n")}\n`, { mode: 0o600, flush: true });
  return key;
}

/**
 * Ends a rotation, also one that was cut short: the drafted key takes the place of the old one where the records are wrapped by it, else it
 * goes. Answers whether the key changed.
 *
 * @param kept the fingerprint that the database keeps
 */
export async function endRotation(folder: string, kept: string | null): Promise<boolean> {
  const draft = join(folder, NEXT);
  const text = await readSecret(draft);
  if (text === null) return false;
  const key = keyBytes(text);
  if (key && kept === keyFingerprint(key)) {
    await rename(draft, join(folder, FILE));
    return true;
  }
  await rm(draft, { force: true });
  return false;
}

/** Is there a rotation to be ended. */
export async function isRotating(folder: string): Promise<boolean> {
  return (await readSecret(join(folder, NEXT))) !== null;
}

/** Tells one key from another without giving it away. */
export function keyFingerprint(key: Buffer): string {
  return createHmac("sha256", key)
    .update("fingerprint of the patient key")
    .digest("hex")
    .slice(0, 16);
}

function trouble(sentence: string): never {
  throw new HomeTrouble(sentence);
}
