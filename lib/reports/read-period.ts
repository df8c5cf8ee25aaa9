import { type Period, period } from "@/lib/records/period";

/** Reads a period as typed in an address or on the command line; undefined where it names none. */
export function readPeriod(text: string): Period | undefined {
  return period(text);
}
