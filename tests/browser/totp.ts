import { createHmac } from "node:crypto";

/** The code of a secret in base32 at a moment, as RFC 6238 has it: SHA-1, steps of half a minute, six digits. */
export function totp(secret: string, at = Date.now()): string {
  const bits = [...secret.replaceAll(" ", "")]
    .map((letter) =>
      "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567".indexOf(letter).toString(2).padStart(5, "0"),
    )
    .join("");
  const key = Buffer.from((bits.match(/.{8}/g) ?? []).map((byte) => Number.parseInt(byte, 2)));
  const step = Buffer.alloc(8);
  step.writeBigUInt64BE(BigInt(Math.floor(at / 30_000)));
  const hash = createHmac("sha1", key).update(step).digest();
  const offset = (hash.at(-1) ?? 0) & 15;
  return String((hash.readUInt32BE(offset) & 0x7fffffff) % 1_000_000).padStart(6, "0");
}
