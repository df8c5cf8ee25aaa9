"use client";

import { useEffect, useState } from "react";
import type { PreviewView } from "@/lib/views/protocol/preview-view";
import { previewAct } from "../acts";
import type { Counted } from "../counted";

/** What a criterion as it is now would have done to the last quarter; null until it is counted for the first time. */
export type Counts = {
  readonly view: PreviewView | null;
  readonly wrong: readonly string[];
  /** A newer count is on its way. */
  readonly waiting: boolean;
};

const pauseMs = 600;

/** Counts anew a moment after the last edit. @param form what is sent, as JSON of its fields */
export function useCounts(form: string): Counts {
  const [counted, setCounted] = useState<{ form: string; answer: Counted } | null>(null);
  useEffect(() => {
    let over = false;
    const timer = setTimeout(async () => {
      const data = new FormData();
      for (const [name, value] of Object.entries(JSON.parse(form) as Record<string, string>))
        data.set(name, value);
      const answer = await previewAct({}, data).catch(
        (): Counted => ({ wrong: { form: "It could not be counted just now." } }),
      );
      if (!over) setCounted({ form, answer });
    }, pauseMs);
    return () => {
      over = true;
      clearTimeout(timer);
    };
  }, [form]);
  return {
    view: counted?.answer.view ?? null,
    wrong: [...new Set(Object.values(counted?.answer.wrong ?? {}))].filter(
      (message) => message !== undefined,
    ),
    waiting: counted?.form !== form,
  };
}
