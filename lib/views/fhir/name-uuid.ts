import { createHash } from "node:crypto";

/** The name space of this project's own names: the name-based UUID of canal-audit.invalid in that of domain names. */
const ownSpace = nameUuid("canal-audit.invalid", "6ba7b810-9dad-11d1-80b4-00c04fd430c8");

/** A UUID of version 5 (RFC 9562, 5.5): the same name in the same space has the same. */
export function nameUuid(name: string, space: string = ownSpace): string {
  const bytes = createHash("sha1")
    .update(Buffer.from(space.replaceAll("-", ""), "hex"))
    .update(name, "utf8")
    .digest()
    .subarray(0, 16);
  bytes.writeUInt8((bytes.readUInt8(6) & 0x0f) | 0x50, 6);
  bytes.writeUInt8((bytes.readUInt8(8) & 0x3f) | 0x80, 8);
  return bytes.toString("hex").replace(/^(.{8})(.{4})(.{4})(.{4})/, "$1-$2-$3-$4-");
}
