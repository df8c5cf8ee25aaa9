import type { Somebody, Who } from "./everybody";

/** A status, or where the answer leads. */
export type Answer = number | `to ${string}`;

/** One address and what it answers. */
export interface Line {
  /** The page's or route's file; a route's method stands before it. */
  of: string;
  address: string;
  /** Sent with a POST, as form data. */
  form?: Record<string, string>;
  /** It ends the session, so it is tried as nobody only; lead.spec.ts signs out. */
  endsSession?: boolean;
  nobody: Answer;
  /** Those who are answered otherwise than the others. */
  answers: Partial<Record<Somebody, Answer>>;
  others: Answer;
}

export const leads = { "group lead": 200, "MEDLAR lead": 200 } as const;
export const clinicians = { "clinician M-03": 200, "clinician M-06": 200 } as const;
export const officers = { "quality officer": 200, "SPINDLE quality officer": 200 } as const;
export const keepers = { "record keeper": 200, "SPINDLE record keeper": 200 } as const;
export const administrators = { administrator: 200, "SPINDLE administrator": 200 } as const;
/** What the line answers to somebody. */
export function answerTo(line: Line, who: Who): Answer {
  return who === "nobody" ? line.nobody : (line.answers[who] ?? line.others);
}

/** A page: nobody is led to the sign-in, everybody else is refused. */
export function page(of: string, address: string, answers: Line["answers"]): Line {
  return { of, address, nobody: "to /sign-in", answers, others: 403 };
}

/** A route for programs and downloads. */
export function api(
  of: string,
  address: string,
  answers: Line["answers"],
  form?: Record<string, string>,
): Line {
  return { of, address, nobody: 401, answers, others: 403, ...(form ? { form } : {}) };
}
