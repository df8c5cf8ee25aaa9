import { toothGroup } from "@/lib/records/tooth";
import type { Clinician } from "./clinician";
import { type Random, rounded } from "./random";

export type Treatment = "primary" | "retreatment" | "emergency" | "dressing" | "other";

/** One root canal as it is, whatever gets written down of it. */
export type Canal = { readonly name: string; readonly curvature: number; readonly length: number };

/** A course of treatment of one tooth; it may take two visits. */
export type Course = {
  readonly caseId: string;
  readonly patient: string;
  /** Two digits by ISO 3950. */
  readonly tooth: string;
  readonly molar: boolean;
  readonly treatment: Treatment;
  readonly pulp: string;
  readonly difficulty: string;
  readonly canals: readonly Canal[];
};

/** A new course: harder teeth go to specialists more often. */
export function makeCourse(
  clinician: Clinician,
  caseId: string,
  patient: string,
  draw: Random,
): Course {
  const specialist = clinician.peers === "specialist";
  const place = draw.weighted(
    specialist ? { molar: 68, premolar: 17, front: 15 } : { molar: 52, premolar: 24, front: 24 },
  );
  const position = {
    molar: draw.chance(0.62) ? 6 : 7,
    premolar: draw.whole(4, 5),
    front: draw.whole(1, 3),
  }[place];
  const tooth = `${draw.whole(1, 4)}${position}`;
  const treatment = draw.weighted<Treatment>(
    specialist
      ? { primary: 66, retreatment: 25, emergency: 5, dressing: 3, other: 1 }
      : { primary: 79, retreatment: 8, emergency: 8, dressing: 4, other: 1 },
  );
  const canals = canalNamesOf(tooth, draw).map((name) => canal(name, tooth, draw));
  const curved = Math.max(...canals.map(({ curvature }) => curvature));
  return {
    caseId,
    patient,
    tooth,
    molar: toothGroup(tooth) === "molar",
    treatment,
    pulp:
      treatment === "retreatment"
        ? "treated"
        : draw.weighted({ vital: 45, necrotic: 50, unknown: 5 }),
    difficulty:
      curved > 35 || treatment === "retreatment" ? "high" : curved > 20 ? "moderate" : "low",
    canals,
  };
}

/** Which canals a tooth has; upper first molars have a second mesiobuccal canal in 70 % (trade knowledge, pooled). */
function canalNamesOf(tooth: string, draw: Random): string[] {
  const upper = tooth < "3";
  const position = Number(tooth[1]);
  if (position >= 6 && upper) {
    return draw.chance(position === 6 ? 0.68 : 0.38)
      ? ["MB1", "MB2", "DB", "P"]
      : ["MB", "DB", "P"];
  }
  if (position >= 6) return draw.chance(0.28) ? ["MB", "ML", "DB", "DL"] : ["MB", "ML", "D"];
  if (position === 4 && upper) return draw.chance(0.8) ? ["B", "P"] : ["main"];
  if (position === 5 && upper) return draw.chance(0.4) ? ["B", "P"] : ["main"];
  if (!upper && position !== 3) return draw.chance(0.2) ? ["B", "L"] : ["main"];
  return ["main"];
}

function canal(name: string, tooth: string, draw: Random): Canal {
  const mesial = name.startsWith("M");
  const curvature = Math.max(
    0,
    draw.normal(mesial ? 24 : name === "main" ? 7 : 13, mesial ? 10 : 6),
  );
  const usual = { 1: 22, 2: 21, 3: 25, 4: 21, 5: 21, 6: 20, 7: 19.5 }[Number(tooth[1])] ?? 21;
  return {
    name,
    curvature: Math.round(curvature),
    length: rounded(draw.normal(usual, 1.2) * 2, 0) / 2,
  };
}
