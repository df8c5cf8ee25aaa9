"use client";

import { useEffect, useState } from "react";
import type { TestView } from "@/lib/views/mapping/test-view";
import { sendJson } from "./send-json";

const pauseMs = 700;

/** The test of a draft on the whole file; `of` is what of the draft makes it read the file so. */
export function useTest(fileId: number | null, of: string, first: TestView) {
  const [test, setTest] = useState({ of, view: first });
  const address = `/api/records/waiting/${fileId}/test`;
  const running = test.view.state === "running";
  useEffect(() => {
    if (!running) return;
    let over = false;
    const timer = setInterval(async () => {
      const answer = await sendJson<TestView>(address);
      if (over || "sentence" in answer || answer.state === "none") return;
      setTest((before) => ({ ...before, view: answer }));
    }, pauseMs);
    return () => {
      over = true;
      clearInterval(timer);
    };
  }, [running, address]);
  const begin = async (json: string) => {
    setTest({ of, view: { state: "running", says: "It begins.", share: null } });
    const answer = await sendJson<TestView>(address, json);
    const view: TestView =
      "sentence" in answer ? { state: "failed", says: answer.sentence } : answer;
    setTest({ of, view });
  };
  return { view: test.view, isOfThis: test.of === of, begin };
}
