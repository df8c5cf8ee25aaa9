"use client";

import { useCallback, useEffect, useRef, useState } from "react";
import type { PreviewView } from "@/lib/views/mapping/preview-view";
import { sendJson } from "./send-json";

const pauseMs = 500;

/**
 * Keeps the draft a moment after the last edit, and what the first rows become by it.
 *
 * @param json the draft as it is sent
 */
export function usePreview(fileId: number | null, json: string, first: PreviewView | null) {
  const [shown, setShown] = useState({ json, view: first, wrong: "" });
  const kept = useRef(json);
  const newest = useRef(json);
  newest.current = json;
  const keep = useCallback(async () => {
    const sent = newest.current;
    if (fileId === null || kept.current === sent) return;
    kept.current = sent;
    const answer = await sendJson<PreviewView>(`/api/records/waiting/${fileId}/preview`, sent);
    if (newest.current !== sent) return;
    if ("sentence" in answer) {
      kept.current = "";
      setShown((before) => ({ ...before, json: sent, wrong: answer.sentence }));
    } else setShown({ json: sent, view: answer, wrong: "" });
  }, [fileId]);
  useEffect(() => {
    if (kept.current === json) return;
    const timer = setTimeout(keep, pauseMs);
    return () => clearTimeout(timer);
  }, [json, keep]);
  useEffect(() => {
    const leave = () => void keep();
    window.addEventListener("pagehide", leave);
    return () => {
      window.removeEventListener("pagehide", leave);
      leave();
    };
  }, [keep]);
  return { view: shown.view, wrong: shown.wrong, waiting: shown.json !== json, keep };
}
