import { createHmac } from "node:crypto";

/**
 * The keyed hash that stands for a patient: HMAC-SHA-256 over the practice and the reference, the reference in
 * Unicode's NFKC form without outer white space. 32 hexadecimal digits (128 bits).
 */
export function patientPseudonym(key: Buffer, practice: string, reference: string): string {
  return createHmac("sha256", key)
    .update(`${practice}\0${reference.normalize("NFKC").trim()}`)
    .digest("hex")
    .slice(0, 32);
}

/** Tells one key from another without giving it away. */
export function keyFingerprint(key: Buffer): string {
  return createHmac("sha256", key)
    .update("fingerprint of the patient key")
    .digest("hex")
    .slice(0, 16);
}
