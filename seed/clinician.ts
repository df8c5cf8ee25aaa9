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

type Usual = "peers" | "time" | "volume" | "separation";
type Described = Omit<Clinician, "practice" | Usual> & Partial<Pick<Clinician, Usual>>;

/** What is not said of a clinician is as usual. */
export function at(practice: PracticeCode, described: readonly Described[]): Clinician[] {
  const usual = { practice, peers: "generalist", time: 1, volume: 1, separation: 1 } as const;
  return described.map((clinician) => ({ ...usual, ...clinician }));
}
