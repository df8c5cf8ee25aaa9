import { createContext, useContext } from "react";
import type { Path } from "@/lib/views/protocol/edit/at-path";
import type { Terms } from "@/lib/views/protocol/edit/vocabulary-choices";

/** What every part of the editor needs. */
export type EditorTools = {
  readonly terms: Terms;
  /** What is wrong, by the part's path joined with points. */
  readonly wrong: Readonly<Record<string, string>>;
  /**
   * Replaces the part at a path; undefined takes it out.
   * @param how.typing the edit goes on with the one before it in the same field
   * @param how.focus ids of what is to have the focus then; the first that can
   */
  readonly change: (
    path: Path,
    part: unknown,
    how?: { readonly typing?: boolean; readonly focus?: readonly string[] },
  ) => void;
};

export const EditorContext = createContext<EditorTools | null>(null);

export function useEditor(): EditorTools {
  const tools = useContext(EditorContext);
  if (!tools) throw new Error("This belongs inside the editor.");
  return tools;
}

/** The id of the element that shows the part at a path. */
export function idOf(path: Path, end = ""): string {
  return ["part", ...path, ...(end ? [end] : [])].join("-");
}
