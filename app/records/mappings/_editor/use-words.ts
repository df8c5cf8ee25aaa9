"use client";

import { useEffect, useState } from "react";
import type { ColumnWords } from "@/lib/views/mapping/column-words";
import { sendJson } from "./send-json";

const known = new Map<string, ColumnWords>();

/** The words of a column of a file that waits; null until they are there, or where they are not wanted. */
export function useWords(fileId: number | null, column: string | undefined, wanted: boolean) {
  const [words, setWords] = useState<{ of: string; words: ColumnWords } | null>(null);
  const of = `${fileId}/${column}`;
  useEffect(() => {
    if (!wanted || fileId === null || column === undefined) return;
    const before = known.get(of);
    if (before) {
      setWords({ of, words: before });
      return;
    }
    let over = false;
    // The draft must be kept first: whether a column may be shown depends on what it feeds.
    const timer = setTimeout(async () => {
      const query = new URLSearchParams({ column });
      const answer = await sendJson<ColumnWords>(`/api/records/waiting/${fileId}/words?${query}`);
      if (over || "sentence" in answer) return;
      if (!answer.hidden) known.set(of, answer);
      setWords({ of, words: answer });
    }, laterMs);
    return () => {
      over = true;
      clearTimeout(timer);
    };
  }, [fileId, column, wanted, of]);
  return words?.of === of ? words.words : null;
}

const laterMs = 900;
