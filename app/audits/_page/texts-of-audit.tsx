"use client";

import { createContext, type ReactNode, useContext, useEffect, useState } from "react";

/** A text as the server has it. */
export type ServerText = { readonly text: string; readonly revision: number; readonly by: string };
type Texts = Readonly<Record<string, ServerText>>;

const everyMs = 4000;
const Shared = createContext<Texts>({});

/** What others write into the same audit, looked for every few seconds while the page is seen. */
export function TextsOfAudit(props: { audit: number; open: boolean; children: ReactNode }) {
  const { audit, open } = props;
  const [texts, setTexts] = useState<Texts>({});
  useEffect(() => {
    if (!open) return;
    let ended = false;
    const look = async () => {
      if (document.visibilityState !== "visible") return;
      try {
        const answer = await fetch(`/api/audits/${audit}/text`);
        if (answer.ok && !ended) setTexts((await answer.json()) as Texts);
      } catch {
        // No connection just now: the next look finds out.
      }
    };
    const timer = setInterval(look, everyMs);
    return () => {
      ended = true;
      clearInterval(timer);
    };
  }, [audit, open]);
  return <Shared value={texts}>{props.children}</Shared>;
}

/** The text of a key as it was last seen on the server; undefined before the first look. */
export function useServerText(key: string): ServerText | undefined {
  return useContext(Shared)[key];
}
