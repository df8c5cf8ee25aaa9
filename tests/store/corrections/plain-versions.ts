import type { Values } from "@/lib/records/column";

/** A held row of the plain account, by where it was read. */
export type PlainRow = { readonly place: string; readonly values: Values };

type Correction = {
  readonly id: string;
  readonly taken: PlainRow;
  readonly before: Values;
  readonly since: PlainRow[];
};

/**
 * The versions of one accepted row, kept in the plainest way: the values that stand, the corrections that led to them with
 * what was read since, and what is held. Places are in the order of reading.
 */
export class PlainVersions {
  values: Values = {};
  corrections: Correction[] = [];
  held: PlainRow[] = [];

  read(row: PlainRow): void {
    if (agrees(this.values, row.values)) this.accept(row);
    else if (!this.corrections.some(({ before }) => saysNoMore(before, row.values)))
      this.held.push(row);
  }

  take(place: string, id: string): void {
    const taken = this.heldAs(place);
    this.held = this.held.filter((row) => row !== taken);
    const before = this.values;
    this.values = { ...before, ...said(taken.values) };
    this.corrections.push({ id, taken, before, since: [] });
    this.judgeHeld();
  }

  takeBack(): void {
    const last = this.corrections.pop();
    if (!last) throw new Error("nothing to take back");
    this.values = last.before;
    this.held.push(last.taken);
    for (const row of last.since) {
      if (agrees(last.before, row.values)) this.accept(row);
      else this.held.push(row);
    }
    this.judgeHeld();
  }

  /** Rows with the same values are held once. */
  heldAs(place: string): PlainRow {
    const found = this.held.find((row) => row.place === place);
    if (!found) throw new Error(`not held: ${place}`);
    return found;
  }

  private accept(row: PlainRow): void {
    this.values = { ...said(row.values), ...said(this.values) };
    this.corrections.at(-1)?.since.push(row);
  }

  private judgeHeld(): void {
    const again = [...this.held].sort((one, other) => (one.place < other.place ? -1 : 1));
    this.held = [];
    for (const row of again) {
      if (agrees(this.values, row.values)) this.accept(row);
      else this.held.push(row);
    }
  }
}

function said(values: Values): Values {
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined));
}

function agrees(stands: Values, row: Values): boolean {
  return Object.entries(said(row)).every(
    ([name, value]) => stands[name] === undefined || stands[name] === value,
  );
}

function saysNoMore(stands: Values, row: Values): boolean {
  return Object.entries(said(row)).every(([name, value]) => stands[name] === value);
}
