import type { Stratum } from "@/lib/measures/tally";

/** A stratum in words: "rotary, syringe". */
export function stratumWords(stratum: Stratum): string {
  const preparation = stratum.preparation ?? "preparation not recorded";
  const delivery =
    stratum.delivery === "mixed"
      ? "several ways of delivery"
      : (stratum.delivery ?? "no delivery recorded");
  return `${preparation}, ${delivery}`;
}

/** How volumes and times were arrived at, in words. */
export function basisWords(basis: string | null): string {
  return basis === null ? "not written down" : basis === "mixed" ? "of several kinds" : basis;
}
