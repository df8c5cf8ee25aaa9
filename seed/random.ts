/** Numbers that look random and are the same on every run and machine. */
export type Random = {
  /** 0 ≤ x < 1. */
  next(): number;
  /** Evenly between the two ends. */
  between(low: number, high: number): number;
  /** A whole number, both ends included. */
  whole(low: number, high: number): number;
  chance(probability: number): boolean;
  pick<Item>(items: readonly Item[]): Item;
  /** One of the names, as often as its weight says. */
  weighted<Name extends string>(weights: Readonly<Partial<Record<Name, number>>>): Name;
  normal(mean: number, deviation: number): number;
  /** Around `median`; `spread` is the standard deviation of the logarithm. */
  logNormal(median: number, spread: number): number;
};

/** A stream of numbers of its own for every name, so that a change in one part leaves the others as they are. */
export function random(name: string): Random {
  let state = hash(name);
  // mulberry32: 32 bits of state are plenty for some hundred thousand draws that decide nothing of weight.
  const next = () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  const between = (low: number, high: number) => low + (high - low) * next();
  const whole = (low: number, high: number) => low + Math.floor(next() * (high - low + 1));
  // Sum of twelve even draws: near enough to normal, and free of functions that differ between machines.
  const normal = (mean: number, deviation: number) => {
    let sum = -6;
    for (let draw = 0; draw < 12; draw += 1) sum += next();
    return mean + deviation * sum;
  };
  return {
    next,
    between,
    whole,
    normal,
    chance: (probability) => next() < probability,
    pick: (items) => {
      const item = items[whole(0, items.length - 1)];
      if (item === undefined) throw new RangeError("nothing to pick from");
      return item;
    },
    weighted: (weights) => weightedName(weights, next()),
    logNormal: (median, spread) => median * Math.exp(normal(0, spread)),
  };
}

/** Rounded to so many decimal places. */
export function rounded(value: number, places: number): number {
  return Number(value.toFixed(places));
}

function weightedName<Name extends string>(
  weights: Readonly<Partial<Record<Name, number>>>,
  draw: number,
): Name {
  const names = Object.keys(weights) as Name[];
  let left = draw * names.reduce((sum, name) => sum + (weights[name] ?? 0), 0);
  for (const name of names) {
    left -= weights[name] ?? 0;
    if (left < 0) return name;
  }
  const last = names.at(-1);
  if (last === undefined) throw new RangeError("nothing to pick from");
  return last;
}

/** FNV-1a, 32 bits. */
function hash(text: string): number {
  let value = 0x811c9dc5;
  for (const char of text) value = Math.imul(value ^ (char.codePointAt(0) ?? 0), 0x01000193);
  return value;
}
