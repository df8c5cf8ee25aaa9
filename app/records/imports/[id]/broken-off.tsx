import { AnsweringForm } from "../../../_parts/answering-form";
import { goOnAct } from "../../acts";

/** An import that was broken off, as when the tool was stopped in the middle: its files are still there. */
export function BrokenOff(props: { importId: number }) {
  const id = String(props.importId);
  return (
    <div className="stack">
      <p>Its files are still here. Go on with them, or have them deleted.</p>
      <AnsweringForm
        act={goOnAct}
        button="Go on with this import"
        hidden={{ import: id, how: "go on" }}
        label="Go on with the import"
      />
      <AnsweringForm
        act={goOnAct}
        button="Delete its files"
        kind="plain"
        hidden={{ import: id, how: "let go" }}
        label="Delete the files of the import"
      />
    </div>
  );
}
