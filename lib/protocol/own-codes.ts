import { isOwnCode } from "@/lib/records/own-code";
import type { Criterion } from "./criterion";
import { listsIn, lookedAt } from "./looked-at";

/** A practice's own term that a criterion bears. */
export type OwnCode = { readonly kind: "step" | "task" | "reason"; readonly code: string };

/** The own terms that a criterion needs a practice to have. */
export function ownCodesIn(criterion: Criterion): OwnCode[] {
  const { population, met, exclusions, exceptions } = criterion;
  const all = { all: [population, met, ...exclusions.map(({ when }) => when)] };
  const named = [
    ...lookedAt(all).map(({ field }) => field),
    ...listsIn(all),
    ...(exceptions?.steps ?? []).map((step) => `step/${step}`),
    ...(exceptions?.reasons ?? []).map((reason) => `reason/${reason}`),
  ];
  return [...new Set(named)].flatMap((name): OwnCode[] => {
    const [, start, code = ""] = /^(step|upkeep|reason)\/(.+)$/.exec(name) ?? [];
    if (!isOwnCode(code)) return [];
    return [{ kind: start === "upkeep" ? "task" : start === "step" ? "step" : "reason", code }];
  });
}

/** A code of one's own from words: "Photograph taken" is own-photograph-taken. */
export function ownCodeOf(words: string): string {
  return `own-${codeOf(words).slice(0, 56).replace(/-+$/, "") || "term"}`;
}

/** Words as a code: small letters, digits and hyphens; empty where nothing of them can be kept. */
export function codeOf(words: string): string {
  return words
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 60)
    .replace(/-+$/, "");
}
