import { solve } from "yalps";

/** A sum of whole numbers that are not below 0, and between what it lies. */
export type Clue = {
  readonly terms: ReadonlyMap<string, number>;
  readonly least: number;
  readonly most: number;
};

/** The terms with 1 for each. */
export function sumOf(names: readonly string[]): Map<string, number> {
  return new Map(names.map((name) => [name, 1]));
}

/**
 * Everything somebody knows. `ranges` answers between what a sum must lie, by linear programming and with ends rounded to whole
 * numbers; `isSolved` whether it follows by sums and differences alone (Gaussian elimination).
 */
export class Puzzle {
  private readonly known = new Map<string, number>();
  private readonly clues: Clue[];
  private readonly part = new Map<string, number>();
  private readonly parts = new Map<number, Clue[]>();
  private readonly worlds = new Map<number, ReadonlyMap<string, number>[]>();

  constructor(clues: readonly Clue[]) {
    this.clues = this.settled(clues);
    for (const [place, clue] of this.clues.entries()) this.join([...clue.terms.keys()], place);
    for (const clue of this.clues) {
      const [name] = clue.terms.keys();
      const at = this.part.get(name ?? "") ?? -1;
      this.parts.set(at, [...(this.parts.get(at) ?? []), clue]);
    }
  }

  /** The least and the most that a sum can be. */
  range(terms: ReadonlyMap<string, number>): [number, number] {
    const { rest, fixed } = this.without(terms);
    if (rest.size === 0) return [fixed, fixed];
    const clues = this.about(rest);
    const ends = (["minimize", "maximize"] as const).map((direction) => {
      const found = bestOf(clues, rest, direction);
      if (!found) return Number.POSITIVE_INFINITY;
      this.remember(clues, found.values);
      return found.result;
    });
    const [low = 0, high = 0] = ends;
    return [Math.ceil(low - 1e-6) + fixed, Math.floor(high + 1e-6) + fixed];
  }

  /** Is a whole-numbered world known in which everything seen is the same and the sum is not this. */
  isOpen(terms: ReadonlyMap<string, number>, truth: number): boolean {
    const { rest, fixed } = this.without(terms);
    const parts = new Set([...rest.keys()].flatMap((name) => this.part.get(name) ?? []));
    if (parts.size !== 1) return false;
    const [at = -1] = parts;
    return (this.worlds.get(at) ?? []).some((world) => {
      let sum = fixed;
      for (const [name, times] of rest) sum += times * (world.get(name) ?? 0);
      return sum !== truth;
    });
  }

  /** Looks for worlds in every direction that the dice say. */
  explore(random: () => number, times: number): void {
    for (const clues of this.parts.values()) {
      const names = [...new Set(clues.flatMap((clue) => [...clue.terms.keys()]))];
      for (let time = 0; time < times; time += 1) {
        const aim = new Map(names.map((name) => [name, Math.floor(random() * 9) - 4]));
        const found = bestOf(clues, aim, "minimize");
        if (found) this.remember(clues, found.values);
      }
    }
  }

  private remember(clues: readonly Clue[], values: ReadonlyMap<string, number>): void {
    const [name = ""] = clues[0]?.terms.keys() ?? [];
    const at = this.part.get(name) ?? -1;
    const whole = new Map([...values].map(([one, value]) => [one, Math.round(value)]));
    // Checked anew, so that a slip of the solver is no world.
    const holds = clues.every(({ terms, least, most }) => {
      let sum = 0;
      for (const [one, times] of terms) sum += times * (whole.get(one) ?? 0);
      return sum >= least && sum <= most;
    });
    const possible = [...whole.values()].every((value) => value >= 0);
    if (holds && possible) this.worlds.set(at, [...(this.worlds.get(at) ?? []), whole]);
  }

  /** Does the sum follow by adding and taking away alone. */
  isSolved(terms: ReadonlyMap<string, number>): boolean {
    const { rest } = this.without(terms);
    const rows = this.about(rest)
      .filter(({ least, most }) => least === most)
      .map((clue) => new Map(clue.terms));
    const target = new Map(rest);
    while (rows.length > 0) {
      const row = rows.pop();
      const pivot = row && [...row].find(([, times]) => Math.abs(times) > 1e-9);
      if (!row || !pivot) continue;
      for (const other of [...rows, target]) {
        const times = (other.get(pivot[0]) ?? 0) / pivot[1];
        if (times === 0) continue;
        for (const [name, value] of row) {
          const left = (other.get(name) ?? 0) - times * value;
          if (Math.abs(left) < 1e-9) other.delete(name);
          else other.set(name, left);
        }
      }
    }
    return target.size === 0;
  }

  /** What follows at once: nothing in all is nothing each, and a sum with one unknown gives it. */
  private settled(clues: readonly Clue[]): Clue[] {
    let open = [...clues];
    for (let before = -1; before !== this.known.size; ) {
      before = this.known.size;
      open = open.flatMap((clue) => {
        const { rest, fixed } = this.without(clue.terms);
        const [least, most] = [clue.least - fixed, clue.most - fixed];
        const plain = [...rest.values()].every((times) => times === 1);
        if (plain && most === 0) for (const name of rest.keys()) this.known.set(name, 0);
        else if (plain && rest.size === 1 && least === most)
          for (const name of rest.keys()) this.known.set(name, least);
        else if (rest.size > 0) return [{ terms: rest, least, most }];
        return [];
      });
    }
    return open;
  }

  private without(terms: ReadonlyMap<string, number>) {
    const rest = new Map([...terms].filter(([name]) => !this.known.has(name)));
    const fixed = [...terms].reduce(
      (sum, [name, times]) => sum + times * (this.known.get(name) ?? 0),
      0,
    );
    return { rest, fixed };
  }

  private join(names: readonly string[], fresh: number): void {
    const old = new Set(names.flatMap((name) => this.part.get(name) ?? []));
    for (const [name, at] of this.part) if (old.has(at)) this.part.set(name, fresh);
    for (const name of names) this.part.set(name, fresh);
  }

  private about(terms: ReadonlyMap<string, number>): Clue[] {
    const parts = new Set([...terms.keys()].flatMap((name) => this.part.get(name) ?? []));
    return [...parts].flatMap((at) => this.parts.get(at) ?? []);
  }
}

/** The best that a sum can be under the clues; undefined where there is no end. */
function bestOf(
  clues: readonly Clue[],
  aim: ReadonlyMap<string, number>,
  direction: "minimize" | "maximize",
): { result: number; values: Map<string, number> } | undefined {
  const rows = new Map<string, [string, number][]>();
  for (const [name, times] of aim) rows.set(name, [["aim", times]]);
  for (const [place, { terms }] of clues.entries())
    for (const [name, times] of terms)
      rows.set(name, [...(rows.get(name) ?? []), [`c${place}`, times]]);
  const constraints = new Map(
    clues.map(({ least, most }, place) => [
      `c${place}`,
      least === most ? { equal: least } : { min: least, ...(most < 1e9 ? { max: most } : {}) },
    ]),
  );
  const { status, result, variables } = solve(
    { direction, objective: "aim", constraints, variables: rows },
    { maxPivots: 100_000 },
  );
  if (status === "unbounded") return undefined;
  if (status !== "optimal") throw new Error(`the attacker's numbers contradict: ${status}`);
  return { result, values: new Map(variables) };
}
