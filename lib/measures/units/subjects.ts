import type { Subject, SubjectKind } from "../tally";
import type { MonthUnits } from "./alike";
import type { Part } from "./values";

/** The parts of one subject, and what they say of who it is. */
export type Bucket = {
  readonly kind: SubjectKind;
  readonly key: string;
  readonly parts: Part[];
  readonly codes: Set<string>;
  /** By why units are left out, or not: the practices that they are of. */
  readonly practices: Map<string, Set<string>>;
};

/** The subjects that the parts of a measure have units of, each with its parts. */
export function bucketsOf(
  measure: string,
  months: readonly MonthUnits[],
  by: ReadonlySet<SubjectKind>,
): Bucket[] {
  const buckets = new Map<string, Bucket>();
  for (const month of months) {
    for (const alike of month.units.get(measure) ?? []) {
      const { chair, clinician, worker, shared } = alike;
      const put = (kind: SubjectKind, key: string, code: string | null) => {
        if (!by.has(kind)) return;
        const name = `${kind}\n${key}`;
        let bucket = buckets.get(name);
        if (!bucket) {
          bucket = { kind, key, parts: [], codes: new Set(), practices: new Map() };
          buckets.set(name, bucket);
        }
        bucket.parts.push([month, alike]);
        if (code !== null) bucket.codes.add(code);
        const reason = `${alike.excluded}\n${alike.excepted}`;
        const practices = bucket.practices.get(reason);
        if (practices) practices.add(month.practice);
        else bucket.practices.set(reason, new Set([month.practice]));
      };
      if (worker !== null) put("clinician", worker, clinician);
      if (shared) continue;
      put("group", "", null);
      put("practice", month.practice, month.practice);
      put("chair", `${month.practice}/${chair}`, chair);
    }
  }
  return inOrder([...buckets.values()]);
}

/** The one practice of the subject; undefined where there are several. */
export function practiceOf({ practices }: Told): string | undefined {
  const all = new Set([...practices.values()].flatMap((some) => [...some]));
  const [only] = all;
  return all.size === 1 ? only : undefined;
}

/** Whom or what a bucket is about. */
export function subjectOf(bucket: Told): Subject {
  const { kind, key } = bucket;
  if (kind === "group") return { kind };
  const code = [...bucket.codes].sort().join(", ");
  if (kind === "practice") return { kind, code };
  const practice = practiceOf(bucket);
  if (kind === "chair") return { kind, code, practice: practice ?? "" };
  return { kind, code, practice, key };
}

/** What tells a subject and where it stands beside others. */
type Told = Pick<Bucket, "kind" | "key" | "codes" | "practices">;

/** By kind as it is named, then practice (several last), code and key. */
export function inOrder<One extends Told>(buckets: readonly One[]): One[] {
  const last = "\uffff";
  return buckets
    .map((bucket) => ({
      bucket,
      keys: [
        bucket.kind,
        (bucket.kind !== "group" && practiceOf(bucket)) || last,
        [...bucket.codes].sort().join(", ") || last,
        bucket.key,
      ],
    }))
    .sort((one, other) => {
      const place = one.keys.findIndex((key, at) => key !== other.keys[at]);
      return place < 0 ? 0 : (one.keys[place] ?? "") < (other.keys[place] ?? "") ? -1 : 1;
    })
    .map(({ bucket }) => bucket);
}
