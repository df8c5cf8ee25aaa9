"use client";

import type { Act } from "@/app/_parts/answer";
import { AnsweringForm } from "@/app/_parts/answering-form";

/** Keeps a changed mapping as its next version. */
export function KeepChanged(props: { act: Act; json: string }) {
  return (
    <AnsweringForm
      act={props.act}
      button="Keep as the next version"
      hidden={{ mapping: props.json }}
      label="Keep the mapping"
    >
      <p>
        It is not tried on a file here. The versions before are kept, and rows that are in stay as
        they are.
      </p>
    </AnsweringForm>
  );
}
