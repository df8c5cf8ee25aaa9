import type { Stratum } from "@/lib/measures/tally";

/** A stratum in words: "rotary, syringe"; "molar, curvature 25° or more, retreatment". */
export function stratumWords(stratum: Stratum): string {
  if (stratum.by === "case") return caseWords(stratum).join(", ");
  const preparation = stratum.preparation ?? "preparation not recorded";
  const delivery =
    stratum.delivery === "mixed"
      ? "several ways of delivery"
      : (stratum.delivery ?? "no delivery recorded");
  return `${preparation}, ${delivery}`;
}

/** The parts of a case in words: tooth group, class of curvature, first treatment or not. */
export function caseWords(stratum: Extract<Stratum, { by: "case" }>): readonly string[] {
  const { tooth, curvature, treatment } = stratum;
  return [
    tooth === "front" ? "incisor or canine" : (tooth ?? "tooth not recorded"),
    curvatureWords[curvature ?? ""] ?? "curvature not recorded",
    treatment === "primary" ? "first treatment" : (treatment ?? "treatment not recorded"),
  ];
}

const curvatureWords: Readonly<Record<string, string>> = {
  slight: "curvature under 10°",
  moderate: "curvature 10° to under 25°",
  severe: "curvature 25° or more",
};

/** How volumes and times were arrived at, in words. */
export function basisWords(basis: string | null): string {
  return basis === null ? "not written down" : basis === "mixed" ? "of several kinds" : basis;
}
