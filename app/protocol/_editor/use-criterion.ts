"use client";

import { useEffect, useReducer, useRef } from "react";
import { type Path, replacedAt } from "@/lib/views/protocol/edit/at-path";
import type { EditedCriterion } from "@/lib/views/protocol/edit/editable";
import { begun, type Edit, edited, type History } from "@/lib/views/protocol/edit/history";
import type { EditorTools } from "./editor-tools";

/** The criterion that is edited, with undo and redo; after an edit the focus goes where the edit says. */
export function useCriterion(first: EditedCriterion) {
  const [history, dispatch] = useReducer(
    (before: History<EditedCriterion>, edit: Edit<EditedCriterion> | Change) =>
      typeof edit === "object" && "at" in edit
        ? edited(before, {
            to: replacedAt(before.now, edit.at, edit.part),
            where: edit.typing ? edit.at.join(".") : null,
          })
        : edited(before, edit),
    begun(first),
  );
  const focus = useRef<readonly string[]>([]);
  useEffect(() => {
    for (const id of focus.current) {
      const element = document.getElementById(id);
      if (!element || (element as HTMLButtonElement).disabled) continue;
      element.focus();
      break;
    }
    focus.current = [];
  });
  const change: EditorTools["change"] = (at, part, how = {}) => {
    focus.current = how.focus ?? [];
    dispatch({ at, part, typing: how.typing ?? false });
  };
  return { history, change, undo: () => dispatch("undo"), redo: () => dispatch("redo") };
}

type Change = { readonly at: Path; readonly part: unknown; readonly typing: boolean };
