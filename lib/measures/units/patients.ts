import type { MonthUnits } from "./alike";

/** The patients of several months, numbered from 0, and of each month the number of each visit's patient. */
export class Patients {
  private readonly numbers = new Map<number, number>();
  private readonly ofMonth = new Map<MonthUnits, Int32Array>();

  /** The number of the patient of each of the month's visits. */
  of(month: MonthUnits): Int32Array {
    const known = this.ofMonth.get(month);
    if (known) return known;
    const found = Int32Array.from(month.patients, (patient) => {
      const number = this.numbers.get(patient);
      if (number !== undefined) return number;
      this.numbers.set(patient, this.numbers.size);
      return this.numbers.size - 1;
    });
    this.ofMonth.set(month, found);
    return found;
  }

  get count(): number {
    return this.numbers.size;
  }
}

/** Events and units by patient, used again and again: only what was written to is cleared. */
export class PatientSums {
  private events = new Float64Array(0);
  private units = new Float64Array(0);
  private seen: number[] = [];

  constructor(private readonly patients: Patients) {}

  add(patient: number, events: number, units: number): void {
    if (patient >= this.units.length) this.grow();
    if (this.units[patient] === 0 && this.events[patient] === 0) this.seen.push(patient);
    this.events[patient] = (this.events[patient] ?? 0) + events;
    this.units[patient] = (this.units[patient] ?? 0) + units;
  }

  /** What the variance between patients with a unit needs, and a clean slate; null where none has. */
  take() {
    const sums = {
      clusters: 0,
      events: 0,
      units: 0,
      eventsSquared: 0,
      eventsByUnits: 0,
      unitsSquared: 0,
    };
    for (const patient of this.seen) {
      const [e, u] = [this.events[patient] ?? 0, this.units[patient] ?? 0];
      this.events[patient] = 0;
      this.units[patient] = 0;
      if (u === 0) continue;
      sums.clusters += 1;
      sums.events += e;
      sums.units += u;
      sums.eventsSquared += e * e;
      sums.eventsByUnits += e * u;
      sums.unitsSquared += u * u;
    }
    this.seen = [];
    return sums.clusters > 0 ? sums : null;
  }

  private grow(): void {
    const size = Math.max(this.patients.count, this.units.length * 2);
    const [events, units] = [new Float64Array(size), new Float64Array(size)];
    events.set(this.events);
    units.set(this.units);
    this.events = events;
    this.units = units;
  }
}
