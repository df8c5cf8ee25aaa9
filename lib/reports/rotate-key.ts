import type { RecordsReach } from "@/lib/access/reach";
import type { Home } from "@/lib/store/home/open-home";
import { draftRotation, endRotation, keyFingerprint } from "@/lib/store/home/patient-key";
import { wrapPatients } from "@/lib/store/patients/wrap-patients";
import { wrappedPseudonym } from "./patient-pseudonym";

const BYTES = 32;

/**
 * Rotates the patient key: a new one wraps every pseudonym (HMAC of the HMAC), so that visits of one patient still meet, and what is brought
 * in later is hashed by both. The key is kept beside before the records change, and takes its place when they have; a rotation cut short
 * between is ended when the home is next opened.
 */
export async function rotateKey(
  reach: RecordsReach,
  home: Pick<Home, "key" | "folder">,
): Promise<{ readonly patients: number; readonly fingerprint: string }> {
  const key = await draftRotation(home.folder);
  const before = keyFingerprint(home.key);
  const fingerprint = keyFingerprint(key);
  const newest = key.subarray(key.length - BYTES);
  try {
    const patients = await wrapPatients(reach, { before, after: fingerprint }, (pseudonym) =>
      wrappedPseudonym(newest, pseudonym),
    );
    await endRotation(home.folder, fingerprint);
    return { patients, fingerprint };
  } catch (error) {
    await endRotation(home.folder, before);
    throw error;
  }
}
