import { createHmac } from "node:crypto";

const BYTES = 32;

/**
 * The keyed hash that stands for a patient: HMAC-SHA-256 over the practice and the reference, the reference in
 * Unicode's NFKC form without outer white space. 32 hexadecimal digits (128 bits). Each further key, of a rotation, wraps the hash before.
 */
export function patientPseudonym(key: Buffer, practice: string, reference: string): string {
  let text = hashed(key.subarray(0, BYTES), `${practice}\0${reference.normalize("NFKC").trim()}`);
  for (let at = BYTES; at < key.length; at += BYTES)
    text = wrappedPseudonym(key.subarray(at, at + BYTES), text);
  return text;
}

/** A pseudonym under one key more: HMAC of the HMAC. */
export function wrappedPseudonym(key: Buffer, pseudonym: string): string {
  return hashed(key, pseudonym);
}

function hashed(key: Buffer, text: string): string {
  return createHmac("sha256", key).update(text).digest("hex").slice(0, 32);
}
