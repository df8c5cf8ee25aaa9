import { createContext, useContext } from "react";
import type { ColumnFacts } from "@/lib/views/mapping/column-facts";
import type { Reasoned } from "@/lib/views/mapping/editor-view";
import type { TableTerms } from "@/lib/views/mapping/terms";
import type { Path } from "@/lib/views/protocol/edit/at-path";

/** What every part of the editor of a mapping needs. */
export type MappingTools = {
  /** The file that waits; null where there is none. */
  readonly fileId: number | null;
  readonly columns: readonly ColumnFacts[];
  readonly terms: readonly TableTerms[];
  readonly reasons: readonly Reasoned[];
  /**
   * Replaces the part of the mapping at a path; undefined takes it out.
   * @param how.typing the edit goes on with the one before it in the same field
   * @param how.focus id of what is to have the focus then
   */
  readonly change: (
    path: Path,
    part: unknown,
    how?: { readonly typing?: boolean; readonly focus?: string },
  ) => void;
};

export const MappingContext = createContext<MappingTools | null>(null);

export function useMapping(): MappingTools {
  const tools = useContext(MappingContext);
  if (!tools) throw new Error("This belongs inside the editor of a mapping.");
  return tools;
}

/** The id of what shows the part at a path. */
export function idAt(path: Path, end = ""): string {
  return ["m", ...path, ...(end ? [end] : [])].join("-").replace(/[^\w-]/g, "_");
}
