import { createHash } from "node:crypto";
import { createReadStream } from "node:fs";
import { pipeline } from "node:stream/promises";
import type { FiguresReach } from "@/lib/access/reach";
import type { Manifest } from "@/lib/store/backup/manifest";
import { writeBackup } from "@/lib/store/backup/write-backup";
import type { Home } from "@/lib/store/home/open-home";
import { keyFingerprint } from "@/lib/store/home/patient-key";
import { figuresFingerprint } from "./all-figures";
import { softwareVersion } from "./software-version";

/** Writes a backup; with `figures` it also says what all figures come to. Answers its manifest and the hash of the file. */
export async function backUp(
  home: Home,
  reach: FiguresReach,
  file: string,
  how: { readonly figures: boolean; readonly secrets: boolean },
): Promise<{ readonly manifest: Manifest; readonly sha256: string }> {
  const manifest = await writeBackup(home, file, {
    software: softwareVersion,
    patientKey: keyFingerprint(home.key),
    secrets: how.secrets,
    ...(how.figures ? { figures: await figuresFingerprint(reach) } : {}),
  });
  const hash = createHash("sha256");
  await pipeline(createReadStream(file), hash);
  return { manifest, sha256: hash.digest("hex") };
}
