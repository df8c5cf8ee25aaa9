import type { ImportLine } from "@/lib/views/import-lines";
import { AnsweringForm } from "../../../_parts/answering-form";
import { cancelAct } from "../../acts";
import { LookAgain } from "./look-again";

/** What an import that runs shows: how far it is, and a way to end it. */
export function Running(props: { of: ImportLine }) {
  const { id, share } = props.of;
  return (
    <div className="stack">
      {share === null ? null : (
        <progress max={1} value={share} aria-label="Share of the rows that is read" />
      )}
      <LookAgain path={`/records/imports/${id}`} />
      <AnsweringForm
        act={cancelAct}
        button="Cancel this import"
        kind="plain"
        hidden={{ import: String(id) }}
        label="Cancel the import"
      />
    </div>
  );
}
