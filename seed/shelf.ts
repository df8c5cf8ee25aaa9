import type { Random } from "./random";
import type { Row } from "./rows";
import { findings, type Practice } from "./scenario";
import type { Visit } from "./visit";

/** One physical instrument, or one of a lot where the practice keeps no ids. */
export type Instrument = { readonly place: string; readonly row: Row };

type Kept = { id: string; lot: string; patients: number; visit: string; cycle: string | undefined };
/** What lies ready, by chair, kind and size. */
export type Shelf = Map<string, Kept>;

/** Instruments that are used again serve four patients at most (the scenario's own rule). */
const mostPatients = 4;

/** The instrument for this visit: the one in use at the chair, or a new one where it has served or has gone. */
export function takeFrom(shelf: Shelf, visit: Visit, kind: string, size: number, draw: Random): Instrument {
  const { practice } = visit;
  const place = `${visit.chair} ${kind} ${size}`;
  const lot = lotOf(practice, kind, visit.day);
  if (practice.instruments === "lots") return { place, row: { lot: draw.chance(0.85) ? lot : undefined, single_use: "no" } };
  if (kind === "hand") return { place, row: { lot } };
  const kept = shelf.get(place) ?? { id: "", lot, patients: mostPatients, visit: "", cycle: undefined };
  if (kept.visit !== visit.id) {
    const worn = practice.instruments === "single-use" || kept.patients >= mostPatients;
    if (worn) Object.assign(kept, { id: `${place.replaceAll(" ", "-")}-${visit.id}`, lot, patients: 0 });
    kept.patients += 1;
    kept.visit = visit.id;
    kept.cycle = kept.patients > 1 && draw.chance(0.98) ? `A-${visit.day.slice(2).replaceAll("-", "")}` : undefined;
  } else if (!shelf.has(place)) {
    kept.id = `${kept.id}-b`;
  }
  shelf.set(place, kept);
  const { id, patients, cycle } = kept;
  return {
    place,
    row: {
      instrument_id: id,
      lot: kept.lot,
      steriliser_cycle: cycle,
      single_use: practice.instruments === "single-use" ? "yes" : "no",
      use_number: patients,
    },
  };
}

function lotOf(practice: Practice, kind: string, day: string): string {
  const weak = findings.weakLot;
  if (practice.code === weak.practice && kind === "rotary" && day >= weak.from) return weak.lot;
  return `L-${practice.visits[0]}${kind[0]?.toUpperCase()}${day.slice(2, 4)}${Math.ceil(Number(day.slice(5, 7)) / 6)}`;
}
