import type { RecordsReach } from "@/lib/access/reach";
import { prisma } from "../database";
import { closeBrokenOff } from "./broken-off";
import { importOf } from "./imports";

/** Folders of uploads whose import runs or was broken off: their files may still be asked for. */
export async function uploadsNeeded(_reach: RecordsReach): Promise<string[]> {
  const rows = await prisma().import.findMany({
    where: { upload: { not: null } },
    select: { upload: true },
  });
  return rows.flatMap(({ upload }) => (upload === null ? [] : [upload]));
}

/** The import needs its upload no longer. */
export async function forgetUpload(_reach: RecordsReach, importId: number): Promise<void> {
  await prisma().import.update({ where: { id: importId }, data: { upload: null } });
}

/** The upload of an import of the reach that was broken off, claimed by whoever asks first; null where there is none. */
export async function claimBrokenOff(
  reach: RecordsReach,
  importId: number,
): Promise<string | null> {
  await closeBrokenOff();
  const found = await importOf(reach, importId);
  if (found?.state !== "failed" || !found.upload) return null;
  const { count } = await prisma().import.updateMany({
    where: { id: importId, upload: found.upload },
    data: { upload: null },
  });
  return count === 1 ? found.upload : null;
}
