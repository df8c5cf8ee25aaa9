"use client";

import { useEffect, useReducer, useRef } from "react";
import type { MappingDraft } from "@/lib/views/mapping/draft";
import { type Path, replacedAt } from "@/lib/views/protocol/edit/at-path";
import { begun, type Edit, edited, type History } from "@/lib/views/protocol/edit/history";
import type { MappingTools } from "./editor-tools";

type Change = { readonly at: Path; readonly part: unknown; readonly typing: boolean };

/** The mapping that is edited, with undo and redo. */
export function useDraft(first: MappingDraft) {
  const [history, dispatch] = useReducer(
    (before: History<MappingDraft>, edit: Edit<MappingDraft> | Change) =>
      typeof edit === "object" && "at" in edit
        ? edited(before, {
            to: replacedAt(before.now, edit.at, edit.part),
            where: edit.typing ? edit.at.join(".") : null,
          })
        : edited(before, edit),
    begun(first),
  );
  const focus = useRef("");
  useEffect(() => {
    if (focus.current) document.getElementById(focus.current)?.focus();
    focus.current = "";
  });
  const change: MappingTools["change"] = (at, part, how = {}) => {
    focus.current = how.focus ?? "";
    dispatch({ at, part, typing: how.typing ?? false });
  };
  return { history, change, undo: () => dispatch("undo"), redo: () => dispatch("redo") };
}
