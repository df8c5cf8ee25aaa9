/**
 * The demo's scenario: Hedgerow, an invented group of three practices named after shrubs, with fifteen clinicians
 * and ten chairs, from October 2024 to 20 November 2026. Every person, place, code and number is made up.
 *
 * What is worth finding:
 *
 * 1. At chair MEDLAR-2 a pump was changed on 16 February 2026 and has delivered 3.7 instead of 6.1 mL a minute
 *    since. Times stay as they were and volumes fall. M-03, who works there three days in four, looks like the one
 *    who changed; M-06's canals fall as well on the two days spent there, and M-03's do not at MEDLAR-4. It is the
 *    chair and not the person.
 * 2. At SPINDLE the rotary instruments of lot L-7713, in use since 1 April 2026, separate about four times as often
 *    as the lots before; reciprocating instruments there, and rotary ones elsewhere, do not.
 * 3. At chair QUINCE-3 nobody has written down a line rinse on a Friday since January 2026, so that its rinse
 *    adherence is no longer assessable. Nothing says that the line was not rinsed: there is no record.
 *
 * And what should not mislead: M-05 is a trainee whose work is not the supervisor's; Q-16 is M-06 in another
 * practice; Q-14 passed from one person to another at the turn of 2026; SPINDLE irrigates by syringe, which is not
 * to be compared with a pump; S-24 leaves so many dam steps unrecorded that isolation cannot be assessed.
 */
export const group = { name: "Hedgerow", mailDomain: "hedgerow.example" };

/** First and last day of the scenario, both included. */
export const span = { first: "2024-10-01", last: "2026-11-20" };

export const findings = {
  pumpChange: { chair: "MEDLAR-2", from: "2026-02-16", flow: 3.7, clinician: "M-03" },
  weakLot: { practice: "SPINDLE", lot: "L-7713", from: "2026-04-01", times: 4.5 },
  silentFridays: { chair: "QUINCE-3", from: "2026-01-01" },
} as const;

export type PracticeCode = "MEDLAR" | "QUINCE" | "SPINDLE";

export type Practice = {
  readonly code: PracticeCode;
  readonly name: string;
  readonly zone: "Europe/London" | "Europe/Brussels";
  /** First part of its visits' numbers. */
  readonly visits: string;
  readonly notation: "fdi" | "palmer";
  /** How its system writes times: the practice's local time, or with its offset. */
  readonly times: "local" | "offset";
  /** Where the numbers of continuous irrigation come from. */
  readonly basis: "metered" | "timer";
  /** reused: ids and lots, up to four patients; single-use: a new one each visit; lots: no ids. */
  readonly instruments: "reused" | "single-use" | "lots";
};

export const practices: readonly Practice[] = [
  {
    code: "MEDLAR",
    name: "Medlar Lane",
    zone: "Europe/London",
    visits: "MV-",
    notation: "fdi",
    times: "local",
    basis: "metered",
    instruments: "reused",
  },
  {
    code: "QUINCE",
    name: "Quince Yard",
    zone: "Europe/London",
    visits: "Q",
    notation: "palmer",
    times: "offset",
    basis: "timer",
    instruments: "lots",
  },
  {
    code: "SPINDLE",
    name: "Spindle Court",
    zone: "Europe/Brussels",
    visits: "SP-",
    notation: "fdi",
    times: "local",
    basis: "metered",
    instruments: "single-use",
  },
];

export type Chair = {
  readonly practice: PracticeCode;
  readonly code: string;
  /** What the pump of its irrigation line delivers, mL/min; none: no line, irrigation is by syringe. */
  readonly flow?: number;
};

export const chairs: readonly Chair[] = [
  { practice: "MEDLAR", code: "MEDLAR-1", flow: 6.3 },
  { practice: "MEDLAR", code: "MEDLAR-2", flow: 6.1 },
  { practice: "MEDLAR", code: "MEDLAR-3", flow: 6.0 },
  { practice: "MEDLAR", code: "MEDLAR-4", flow: 6.2 },
  { practice: "QUINCE", code: "QUINCE-1", flow: 5.5 },
  { practice: "QUINCE", code: "QUINCE-2" },
  { practice: "QUINCE", code: "QUINCE-3", flow: 5.5 },
  { practice: "SPINDLE", code: "SPINDLE-1", flow: 5.8 },
  { practice: "SPINDLE", code: "SPINDLE-2" },
  { practice: "SPINDLE", code: "SPINDLE-3" },
];
