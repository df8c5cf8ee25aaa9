import type { Criterion } from "@/lib/protocol/criterion";
import { defaults } from "@/lib/protocol/defaults/defaults";
import type { Protocol } from "@/lib/protocol/protocol";
import { day } from "../day";
import { setShare } from "../quantity";
import { unitWords } from "./code-words";
import { type CriterionState, criterionStates } from "./criterion-state";

/** A criterion as the list of a practice's protocol shows it. */
export type ProtocolLine = {
  readonly id: string;
  readonly title: string;
  readonly statement: string;
  readonly counts: string;
  readonly target: string;
  /** "from the beginning, changed on 3 Jul 2026", "since 3 Jul 2026"; of one not in force why it is not. */
  readonly standing: string;
  /** Null where no change is to come. */
  readonly next: string | null;
};

export type ProtocolView = {
  readonly inForce: readonly ProtocolLine[];
  readonly own: readonly ProtocolLine[];
  readonly notInForce: readonly ProtocolLine[];
};

/** A practice's protocol on a day. */
export function protocolView(protocol: Protocol, practice: string, today: string): ProtocolView {
  const states = criterionStates(protocol, practice, today);
  const line = (state: CriterionState) => lineOf(state, protocol, practice);
  const inForce = states.filter((state) => state.inForce !== null);
  return {
    inForce: inForce.filter((state) => !isOwn(state)).map(line),
    own: inForce.filter(isOwn).map(line),
    notInForce: states.filter((state) => state.inForce === null).map(line),
  };
}

/** "from the beginning, changed on 3 Jul 2026", "since 3 Jul 2026"; of a criterion not in force why it is not. */
export function standingWords(state: CriterionState, protocol: Protocol, practice: string): string {
  if (state.inForce) {
    const since = state.began === null ? "from the beginning" : `since ${day(state.began)}`;
    const changed = state.since !== null && state.since !== state.began;
    return changed ? `${since}, changed on ${day(state.since)}` : since;
  }
  const ended = protocol.versions
    .filter((one) => one.practice === practice && one.criterion.id === state.id && !one.inForce)
    .sort((one, other) => (one.from < other.from ? 1 : -1))
    .at(0);
  if (ended && state.everBefore)
    return `out of force since ${day(ended.from)}: ${ended.reason.replace(/\.$/, "")}`;
  if (state.next) return "not yet in force";
  return hasUnsetLimit(state.latest)
    ? "no limit is set; it comes into force when the practice sets one"
    : "it comes into force when the practice asks for it";
}

/** "changes on 3 Jul 2026"; null where no change is to come. */
export function nextWords({ inForce, next }: CriterionState): string | null {
  if (!next) return null;
  const verb = next.criterion === null ? "goes out of force" : inForce ? "changes" : "begins";
  return `${verb} on ${day(next.from)}`;
}

/** How a criterion stands, in one sentence. */
export function standingSentence(
  state: CriterionState,
  protocol: Protocol,
  practice: string,
): string {
  const standing = standingWords(state, protocol, practice);
  const begin = state.inForce
    ? `In force ${standing}`
    : standing.startsWith("out of force") || standing.startsWith("not yet")
      ? `${standing.charAt(0).toUpperCase()}${standing.slice(1)}`
      : `Not in force: ${standing}`;
  const next = nextWords(state);
  return `${begin}${next ? `; it ${next}` : ""}.`;
}

function lineOf(state: CriterionState, protocol: Protocol, practice: string): ProtocolLine {
  const { id, title, statement, target, unit } = state.latest;
  return {
    ...{ id, title, statement },
    counts: unitWords[unit].several,
    target: setShare(target),
    standing: standingWords(state, protocol, practice),
    next: nextWords(state),
  };
}

function isOwn({ id }: CriterionState): boolean {
  return !defaults.some((one) => one.id === id);
}

function hasUnsetLimit({ met }: Criterion): boolean {
  return /"(atLeast|atMost)":null/.test(JSON.stringify(met));
}
