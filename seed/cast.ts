import type { PracticeCode } from "./scenario";

type Powered = "oscillating" | "rotary" | "reciprocating";

/** A person's way of working under one code in one practice. */
export type Clinician = {
  readonly practice: PracticeCode;
  readonly code: string;
  readonly person: string;
  readonly peers: "generalist" | "specialist" | "trainee";
  readonly supervisor?: string;
  /** First and last day of the code being theirs, where it is not the whole span. */
  readonly from?: string;
  readonly to?: string;
  /** The chair of each weekday, Monday first; empty is a day elsewhere. */
  readonly rota: readonly [string, string, string, string, string];
  /** Root canal visits on a day, on average. */
  readonly pace: number;
  /** Irrigating time and syringe volume, as multiples of the usual. */
  readonly time: number;
  readonly volume: number;
  /** Multiple of the usual chance of a separation. */
  readonly separation: number;
  /** Shares: timer reset, length written down, dam placed, dam written down, final rinse activated. */
  readonly reset: number;
  readonly length: number;
  readonly dam: number;
  readonly damWritten: number;
  readonly activated: number;
  /** How often which preparation is chosen; oscillating only where the chair has a line. */
  readonly kinds: Readonly<Partial<Record<Powered, number>>>;
};

const off = "";

export const cast: readonly Clinician[] = [
  { practice: "MEDLAR", code: "M-01", person: "HG-01", peers: "specialist", rota: ["MEDLAR-1", "MEDLAR-1", "MEDLAR-1", off, off], pace: 1.5, time: 0.84, volume: 0.95, separation: 0.7, reset: 0.98, length: 0.99, dam: 0.998, damWritten: 0.985, activated: 0.9, kinds: { oscillating: 8, rotary: 2 } },
  { practice: "MEDLAR", code: "M-02", person: "HG-02", peers: "generalist", rota: ["MEDLAR-3", off, "MEDLAR-3", "MEDLAR-3", off], pace: 0.9, time: 1.06, volume: 1.05, separation: 1, reset: 0.96, length: 0.97, dam: 0.985, damWritten: 0.97, activated: 0.6, kinds: { oscillating: 9, rotary: 1 } },
  { practice: "MEDLAR", code: "M-03", person: "HG-03", peers: "generalist", rota: ["MEDLAR-2", "MEDLAR-2", "MEDLAR-2", off, "MEDLAR-4"], pace: 1, time: 1, volume: 1, separation: 0.9, reset: 0.97, length: 0.98, dam: 0.99, damWritten: 0.975, activated: 0.7, kinds: { oscillating: 9, rotary: 1 } },
  { practice: "MEDLAR", code: "M-04", person: "HG-04", peers: "generalist", rota: ["MEDLAR-4", "MEDLAR-4", off, "MEDLAR-4", off], pace: 0.9, time: 1.2, volume: 1.1, separation: 1.1, reset: 0.91, length: 0.93, dam: 0.97, damWritten: 0.96, activated: 0.5, kinds: { oscillating: 7, rotary: 3 } },
  { practice: "MEDLAR", code: "M-05", person: "HG-05", peers: "trainee", supervisor: "M-01", rota: [off, off, off, "MEDLAR-1", "MEDLAR-1"], pace: 0.75, time: 1.34, volume: 1.15, separation: 1.5, reset: 0.9, length: 0.96, dam: 0.98, damWritten: 0.98, activated: 0.75, kinds: { oscillating: 1 } },
  { practice: "MEDLAR", code: "M-06", person: "HG-06", peers: "generalist", rota: [off, "MEDLAR-3", off, "MEDLAR-2", "MEDLAR-2"], pace: 0.9, time: 0.95, volume: 0.95, separation: 1, reset: 0.95, length: 0.96, dam: 0.985, damWritten: 0.97, activated: 0.65, kinds: { oscillating: 9, rotary: 1 } },
  { practice: "QUINCE", code: "Q-16", person: "HG-06", peers: "generalist", rota: ["QUINCE-1", off, "QUINCE-1", off, off], pace: 0.7, time: 0.95, volume: 0.95, separation: 1, reset: 0.93, length: 0.95, dam: 0.98, damWritten: 0.96, activated: 0.6, kinds: { oscillating: 8, rotary: 2 } },
  { practice: "QUINCE", code: "Q-11", person: "HG-07", peers: "specialist", rota: [off, "QUINCE-1", off, "QUINCE-1", "QUINCE-1"], pace: 1.4, time: 0.9, volume: 1.1, separation: 0.7, reset: 0.975, length: 0.985, dam: 0.995, damWritten: 0.98, activated: 0.85, kinds: { oscillating: 6, rotary: 4 } },
  { practice: "QUINCE", code: "Q-12", person: "HG-08", peers: "generalist", rota: ["QUINCE-2", "QUINCE-2", "QUINCE-2", "QUINCE-2", off], pace: 0.8, time: 1.05, volume: 0.85, separation: 1.1, reset: 0.9, length: 0.92, dam: 0.95, damWritten: 0.95, activated: 0.3, kinds: { rotary: 6, reciprocating: 4 } },
  { practice: "QUINCE", code: "Q-13", person: "HG-09", peers: "generalist", rota: ["QUINCE-3", off, "QUINCE-3", off, "QUINCE-3"], pace: 1, time: 1.1, volume: 1, separation: 1, reset: 0.94, length: 0.95, dam: 0.975, damWritten: 0.96, activated: 0.5, kinds: { oscillating: 9, rotary: 1 } },
  { practice: "QUINCE", code: "Q-14", person: "HG-10", peers: "generalist", to: "2025-12-31", rota: [off, "QUINCE-3", off, "QUINCE-3", off], pace: 0.9, time: 0.86, volume: 0.9, separation: 1.2, reset: 0.88, length: 0.9, dam: 0.96, damWritten: 0.94, activated: 0.3, kinds: { oscillating: 7, rotary: 3 } },
  { practice: "QUINCE", code: "Q-14", person: "HG-15", peers: "generalist", from: "2026-01-01", rota: [off, "QUINCE-3", off, "QUINCE-3", off], pace: 0.9, time: 1.15, volume: 1.1, separation: 0.9, reset: 0.97, length: 0.98, dam: 0.99, damWritten: 0.975, activated: 0.8, kinds: { oscillating: 8, rotary: 2 } },
  { practice: "SPINDLE", code: "S-21", person: "HG-11", peers: "specialist", rota: ["SPINDLE-1", "SPINDLE-1", "SPINDLE-1", off, off], pace: 1.3, time: 0.95, volume: 1.2, separation: 0.8, reset: 0.97, length: 0.985, dam: 0.995, damWritten: 0.98, activated: 0.9, kinds: { oscillating: 3, rotary: 7 } },
  { practice: "SPINDLE", code: "S-22", person: "HG-12", peers: "generalist", rota: ["SPINDLE-2", "SPINDLE-2", off, "SPINDLE-2", "SPINDLE-2"], pace: 0.85, time: 1, volume: 0.95, separation: 1, reset: 0.93, length: 0.95, dam: 0.97, damWritten: 0.965, activated: 0.6, kinds: { rotary: 6, reciprocating: 4 } },
  { practice: "SPINDLE", code: "S-23", person: "HG-13", peers: "generalist", rota: [off, "SPINDLE-3", "SPINDLE-3", "SPINDLE-3", "SPINDLE-3"], pace: 0.8, time: 1.1, volume: 1.05, separation: 1, reset: 0.95, length: 0.96, dam: 0.985, damWritten: 0.97, activated: 0.7, kinds: { rotary: 2, reciprocating: 8 } },
  { practice: "SPINDLE", code: "S-24", person: "HG-14", peers: "generalist", rota: [off, off, off, "SPINDLE-1", "SPINDLE-1"], pace: 0.9, time: 0.92, volume: 0.8, separation: 1.1, reset: 0.9, length: 0.91, dam: 0.97, damWritten: 0.85, activated: 0.4, kinds: { oscillating: 4, rotary: 6 } },
];
