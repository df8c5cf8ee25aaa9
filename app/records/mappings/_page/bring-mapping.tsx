import { AnsweringForm } from "../../../_parts/answering-form";
import { bringMappingAct } from "../acts";

/** Keeps a mapping from its JSON file. */
export function BringMapping() {
  return (
    <AnsweringForm act={bringMappingAct} button="Keep it" row label="Keep a mapping from its file">
      <div>
        <label htmlFor="mapping-file">Mapping file (JSON)</label>
        <p className="hint" id="mapping-file-hint">
          Under a name that is kept already it becomes the next version.
        </p>
        <input
          id="mapping-file"
          type="file"
          name="mapping"
          accept=".json"
          aria-describedby="mapping-file-hint"
        />
      </div>
    </AnsweringForm>
  );
}
