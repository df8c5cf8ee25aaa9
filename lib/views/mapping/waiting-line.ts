import { bytesWords } from "./bytes-words";
import type { Choice } from "./terms";

/** A file that waits, as the list shows it. */
export type WaitingLine = {
  readonly id: number;
  readonly name: string;
  readonly brought: string;
  /** How it is written, or why it cannot be read. */
  readonly known: string;
  /** What is to be done, or that it may be brought in. */
  readonly next: string;
  readonly ready: boolean;
  /** It can be opened. */
  readonly opens: boolean;
  /** Its mapping is begun. */
  readonly begun: boolean;
  /** Kept mappings that could read it. */
  readonly fitting: readonly Choice[];
};

type Input = {
  readonly id: number;
  readonly name: string;
  readonly bytes: number;
  readonly at: string;
  readonly by: string;
  readonly trouble: string | null;
  readonly understood: string | null;
  readonly mapping: string | null;
  readonly todo: string | null;
  readonly keptAs: number | null;
  readonly fitting: readonly Choice[];
};

/** What is known of a file that waits, in sentences. */
export function waitingLine(file: Input): WaitingLine {
  const { id, name, fitting, trouble, understood } = file;
  return {
    ...{ id, name, fitting },
    brought: `${bytesWords(file.bytes)}, brought ${file.at} by ${file.by}`,
    known: trouble ?? understood ?? "It is being looked through.",
    next: understood === null ? "" : nextStep(file),
    ready: understood !== null && file.todo === null,
    opens: understood !== null,
    begun: file.mapping !== null,
  };
}

function nextStep({ mapping, todo, keptAs, fitting }: Input): string {
  if (mapping === null)
    return fitting.length > 0
      ? "A kept mapping may read it: choose it, or make another."
      : "No kept mapping reads it: make one.";
  if (todo !== null) return todo;
  return keptAs === null
    ? `Its mapping “${mapping}” was tested; it may be brought in.`
    : `It is read by the kept mapping “${mapping}”, version ${keptAs}; it may be brought in.`;
}
