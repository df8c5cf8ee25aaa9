import { createHash } from "node:crypto";
import { canonicalJson } from "@/lib/views/canonical-json";

/** SHA-256 in hexadecimal of a view in canonical JSON: the same view has the same, whatever file it is written to. */
export function fingerprintOf(view: unknown): string {
  return sha256(canonicalJson(view));
}

/** SHA-256 in hexadecimal; of a text, that of its UTF-8. */
export function sha256(bytes: string | Uint8Array): string {
  return createHash("sha256").update(bytes).digest("hex");
}
