import type { FiguresReach } from "@/lib/access/reach";
import { loadBackup } from "@/lib/store/backup/load-backup";
import type { Manifest } from "@/lib/store/backup/manifest";
import { putBackFiles } from "@/lib/store/backup/put-back-files";
import { checkedBackup } from "@/lib/store/backup/read-backup";
import { refuseHeldHome } from "@/lib/store/home/hold-home";
import { logOwnerUrl } from "@/lib/store/home/keep-log";
import type { Home } from "@/lib/store/home/open-home";
import { keyFingerprint } from "@/lib/store/home/patient-key";
import { readyDatabase } from "@/lib/store/home/ready-database";
import { figuresFingerprint } from "./all-figures";
import { softwareVersion } from "./software-version";

export type Restored = {
  readonly manifest: Manifest;
  /** Migrations applied after it was loaded. */
  readonly upgraded: readonly string[];
  /** The home's patient key: it was the backup's, came with the backup, or is another and must be put back. */
  readonly patientKey: "same" | "put back" | "another";
  /** All figures as the backup says, or computed otherwise by another version; null where it says nothing. */
  readonly figures: "same" | "different" | "of another version" | null;
};

/**
 * Restores a backup: it is read and checked whole, loaded in one transaction, then brought up to date. Files of the home
 * come back where the backup has them, and figures are computed again where it says what they were.
 *
 * @throws HomeTrouble in a sentence; the database is then as it was
 */
export async function restoreBackup(
  home: Home,
  reach: FiguresReach,
  file: string,
  replace: boolean,
): Promise<Restored> {
  await refuseHeldHome(home.folder);
  const manifest = await checkedBackup(file);
  await loadBackup(home.url, file, manifest, replace, logOwnerUrl(home));
  const patientKey = await putBackKey(home, file, manifest);
  const upgraded = await readyDatabase(home);
  return { manifest, upgraded, patientKey, figures: await compared(reach, manifest) };
}

async function putBackKey(
  home: Home,
  file: string,
  manifest: Manifest,
): Promise<Restored["patientKey"]> {
  const same = keyFingerprint(home.key) === manifest.patientKey;
  // A key of the environment stands above the home's own.
  const given = Boolean(process.env.CANAL_AUDIT_PATIENT_KEY?.trim());
  const names = manifest.files.map(({ name }) => name);
  const key = names.includes("patient-key") && !same && !given;
  await putBackFiles(
    home.folder,
    file,
    names.filter((name) => name !== "patient-key" || key),
  );
  return same ? "same" : key ? "put back" : "another";
}

async function compared(reach: FiguresReach, manifest: Manifest): Promise<Restored["figures"]> {
  if (!manifest.figures) return null;
  const now = await figuresFingerprint(reach);
  if (now.sha256 === manifest.figures.sha256) return "same";
  return manifest.software === softwareVersion ? "different" : "of another version";
}
