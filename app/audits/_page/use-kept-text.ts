"use client";

import { useRouter } from "next/navigation";
import { useCallback, useEffect, useRef, useState } from "react";
import { mergedText } from "@/lib/views/audits/merged-text";
import { useServerText } from "./texts-of-audit";

type Base = { readonly text: string; readonly revision: number };
type State = "kept" | "typing" | "keeping" | "waiting";

const afterMs = 800;
const againMs = 3000;

/**
 * A text that is kept as it is typed. What others typed is merged in, here and on the server, so that nothing anybody wrote goes.
 *
 * @param kept tells the server's text in force at every change
 */
export function useKeptText(audit: number, key: string, begun: Base) {
  const [text, setText] = useState(begun.text);
  const [state, setState] = useState<State>("kept");
  const [wrong, setWrong] = useState("");
  const [from, setFrom] = useState("");
  const now = useRef(begun.text);
  const base = useRef<Base>(begun);
  const keeping = useRef(false);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const server = useServerText(key);
  const { refresh } = useRouter();

  const show = useCallback((next: string) => {
    now.current = next;
    setText(next);
  }, []);

  const keep = useCallback(async () => {
    if (keeping.current || now.current === base.current.text) return;
    const sent = now.current;
    keeping.current = true;
    setState("keeping");
    let again = 0;
    try {
      const answer = await fetch(`/api/audits/${audit}/text`, {
        method: "POST",
        headers: { "content-type": "application/json" },
        body: JSON.stringify({ key, begun: base.current.revision, text: sent }),
        keepalive: sent.length < 60_000,
      });
      const told = await answer.json();
      if (answer.ok) {
        setWrong("");
        show(mergedText(sent, told.text, now.current));
        // What a step still lacks, and the step of a look that follows, rest on whether a text is there.
        if ((base.current.text.trim() === "") !== (told.text.trim() === "")) refresh();
        base.current = told;
        again = now.current === told.text ? 0 : afterMs;
      } else setWrong(told.sentence);
    } catch {
      setWrong("Not kept: there is no connection. It is tried again; leave this page open.");
      again = againMs;
    }
    keeping.current = false;
    setState(again === 0 ? "kept" : "waiting");
    if (again > 0) timer.current = setTimeout(keep, again);
  }, [audit, key, show, refresh]);

  const type = useCallback(
    (next: string) => {
      show(next);
      setState("typing");
      clearTimeout(timer.current);
      timer.current = setTimeout(keep, afterMs);
    },
    [keep, show],
  );

  useEffect(() => {
    if (!server || server.revision <= base.current.revision || keeping.current) return;
    show(mergedText(base.current.text, server.text, now.current));
    base.current = server;
    setFrom(server.by);
  }, [server, show]);

  // Whoever leaves while something is unsent sends it on the way out.
  useEffect(() => {
    const leave = () => {
      clearTimeout(timer.current);
      void keep();
    };
    addEventListener("pagehide", leave);
    return () => {
      removeEventListener("pagehide", leave);
      leave();
    };
  }, [keep]);

  return { text, state, wrong, from, type };
}
