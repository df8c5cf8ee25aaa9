import type { Random } from "./random";
import type { Row } from "./rows";
import { findings, type Practice } from "./scenario";
import type { Visit } from "./visit";

type Kept = { id: string; lot: string; patients: number; visit: string; cycle: string | undefined };

/** What lies ready, by chair, kind and size, and how many instruments were ever taken. */
export type Shelf = { readonly kept: Map<string, Kept>; taken: number };

/** Instruments that are used again serve four patients at most (the scenario's own rule). */
const mostPatients = 4;

/** The cells of the instrument used now: the one in use at the chair, or a new one where it has served or gone. */
export function takeFrom(
  shelf: Shelf,
  visit: Visit,
  kind: string,
  size: number,
  draw: Random,
): Row {
  const { practice } = visit;
  const lot = lotOf(practice, kind, visit.day);
  if (practice.instruments === "lots") {
    return { lot: draw.chance(0.85) ? lot : undefined, single_use: "yes", use_number: 1 };
  }
  if (kind === "hand") return { lot, single_use: "yes", use_number: 1 };
  const place = placeOf(visit, kind, size);
  let kept = shelf.kept.get(place);
  const served = practice.instruments === "single-use" ? 1 : mostPatients;
  if (!kept || (kept.visit !== visit.id && kept.patients >= served)) {
    shelf.taken += 1;
    const id = `${practice.visits[0]}I-${String(shelf.taken).padStart(5, "0")}`;
    kept = { id, lot, patients: 0, visit: "", cycle: undefined };
    shelf.kept.set(place, kept);
  }
  if (kept.visit !== visit.id) {
    kept.patients += 1;
    kept.visit = visit.id;
    const again = kept.patients > 1 && draw.chance(0.98);
    kept.cycle = again ? `A-${visit.day.slice(2).replaceAll("-", "")}` : undefined;
  }
  return {
    instrument_id: kept.id,
    lot: kept.lot,
    steriliser_cycle: kept.cycle,
    single_use: practice.instruments === "single-use" ? "yes" : "no",
    use_number: kept.patients,
  };
}

/** The instrument has separated: the next use takes a new one. */
export function throwAway(shelf: Shelf, visit: Visit, kind: string, size: number): void {
  shelf.kept.delete(placeOf(visit, kind, size));
}

function placeOf(visit: Visit, kind: string, size: number): string {
  return `${visit.chair} ${kind} ${size}`;
}

function lotOf(practice: Practice, kind: string, day: string): string {
  const weak = findings.weakLot;
  if (practice.code === weak.practice && kind === "rotary" && day >= weak.from) return weak.lot;
  const half = Math.ceil(Number(day.slice(5, 7)) / 6);
  return `L-${practice.visits[0]}${kind.slice(0, 3).toUpperCase()}${day.slice(2, 4)}${half}`;
}
