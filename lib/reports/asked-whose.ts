import { z } from "zod";
import type { FiguresReach } from "@/lib/access/reach";
import type { Figure } from "@/lib/audit/figure";
import type { Whose } from "@/lib/store/comparing/separations-in-order";
import { inOrderOfCodes, rowLabel } from "@/lib/views/interval-chart";
import { toldApart } from "@/lib/views/told-apart";

/** Whose line over time is shown, and whose can be. */
export type AskedWhose = {
  readonly whose: Whose;
  /** As addresses and forms name it: empty, practice:NORTH or clinician:NORTH/A1. */
  readonly name: string;
  readonly words: string;
  readonly options: readonly { readonly value: string; readonly words: string }[];
};

const name = z
  .string()
  .regex(/^(practice|clinician):.+$/)
  .optional()
  .catch(undefined);

/**
 * Reads ?whose=… among the subjects of the page's figures; the whole where it names none of them. Within one practice the
 * whole is that practice.
 */
export function askedWhose(
  asked: string | string[] | undefined,
  practice: string | undefined,
  figures: readonly Figure[],
): AskedWhose {
  const whole = practice ? `practice ${practice}` : "all practices";
  const kinds = practice ? ["clinician"] : ["practice", "clinician"];
  const subjects = kinds.flatMap((kind) =>
    inOrderOfCodes(figures.filter(({ about }) => about.kind === kind)),
  );
  const called = toldApart(subjects, (figure) => `${figure.about.kind} ${rowLabel(figure.about)}`);
  const options = subjects.map((figure) => ({ value: nameOf(figure), words: called(figure) }));
  const chosen = options.find((one) => one.value === name.parse(asked));
  const told = [{ value: "", words: whole }, ...options];
  if (!chosen)
    return {
      whose: practice ? { kind: "practice", subject: practice } : { kind: "group", subject: "" },
      name: "",
      words: whole,
      options: told,
    };
  const [kind, subject] = splitName(chosen.value);
  return {
    whose: { kind, subject },
    name: chosen.value,
    words: chosen.words,
    options: told,
  };
}

function nameOf({ about }: Figure): string {
  if (about.kind === "practice") return `practice:${about.code}`;
  return about.kind === "clinician" ? `clinician:${about.key}` : "";
}

function splitName(value: string): ["practice" | "clinician", string] {
  const at = value.indexOf(":");
  const kind = value.slice(0, at) === "practice" ? "practice" : "clinician";
  return [kind, value.slice(at + 1)];
}

/** The one practice of a reach that has but one, its own or the chosen one. */
export function onlyPractice({ practices }: FiguresReach): string | undefined {
  return practices?.length === 1 ? practices[0] : undefined;
}
