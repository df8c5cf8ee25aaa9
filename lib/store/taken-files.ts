import type { RecordsReach } from "@/lib/access/reach";
import { prisma } from "./database";

/** The import that took a file of this content (SHA-256, hexadecimal), or null where none did. */
export async function importThatTook(_reach: RecordsReach, sha256: string): Promise<number | null> {
  const found = await prisma().takenFile.findFirst({ where: { sha256 } });
  return found?.importId ?? null;
}

/** Notes that an import took the file. */
export async function noteTaken(
  _reach: RecordsReach,
  file: { sha256: string; name: string; importId: number },
): Promise<void> {
  const { sha256, ...rest } = file;
  await prisma().takenFile.upsert({ where: { sha256 }, create: file, update: rest });
}
