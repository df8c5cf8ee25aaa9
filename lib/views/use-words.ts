import type { Values } from "@/lib/records/column";
import { count, decimal } from "./quantity";
import { reasonWords } from "./reason-words";

/** One use of an instrument, with what became of it. */
export function useWords(use: Values): string {
  const size = typeof use.size === "number" ? ` ${use.size}` : "";
  const taper = typeof use.taper_pct === "number" ? `, taper ${use.taper_pct} %` : "";
  const id = use.instrument_id === undefined ? "" : `, ${use.instrument_id}`;
  const uses = typeof use.uses === "number" && use.uses > 1 ? `, ${count(use.uses)} uses` : "";
  return `${use.seq}. ${reasonWords(String(use.kind))}${size}${taper}${id}${uses}: ${outcomeWords(use)}`;
}

function outcomeWords(use: Values): string {
  if (use.separated === undefined) return "separation not recorded";
  if (use.separated === 0) return "no separation";
  const third = use.third === undefined ? "third not recorded" : `${use.third} third`;
  const fragment =
    typeof use.fragment_mm === "number"
      ? `${decimal(use.fragment_mm, 1)} mm`
      : "length not recorded";
  const management =
    use.management === undefined ? "management not recorded" : reasonWords(String(use.management));
  const told =
    use.patient_told === undefined
      ? "not recorded whether the patient was told"
      : use.patient_told
        ? "patient told"
        : "patient not told";
  return `separated, ${third}, ${fragment}, ${management}, ${told}`;
}
