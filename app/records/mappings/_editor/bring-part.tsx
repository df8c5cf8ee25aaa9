"use client";

import { startTransition, useActionState } from "react";
import type { Act, Answer } from "@/app/_parts/answer";

/** Keeps the mapping, and brings the file in by it. What was changed last is kept first. */
export function BringPart(props: {
  fileId: number;
  keep: () => Promise<void>;
  bring: Act;
  keepOnly: Act;
}) {
  const [brought, bring, bringing] = useActionState(props.bring, {});
  const [kept, keepOnly, keeping] = useActionState(props.keepOnly, {});
  const waiting = bringing || keeping;
  const send = async (act: (form: FormData) => void) => {
    await props.keep();
    const form = new FormData();
    form.set("file", String(props.fileId));
    startTransition(() => act(form));
  };
  return (
    <div className="stack-tight">
      <div className="form-row">
        <button type="button" className="main" disabled={waiting} onClick={() => send(bring)}>
          {bringing ? "One moment …" : "Keep the mapping and bring the file in"}
        </button>
        <button type="button" disabled={waiting} onClick={() => send(keepOnly)}>
          Keep the mapping; the file waits
        </button>
      </div>
      <div role="status">
        <Said answer={brought} />
        <Said answer={kept} />
      </div>
    </div>
  );
}

function Said(props: { answer: Answer }) {
  const { wrong, done } = props.answer;
  if (wrong?.form) return <p className="form-error">{wrong.form}</p>;
  return done ? <p className="form-done">{done}</p> : null;
}
