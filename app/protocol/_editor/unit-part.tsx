"use client";

import { aboutUnit } from "@/lib/views/protocol/edit/beginnings";
import type { EditedCriterion } from "@/lib/views/protocol/edit/editable";
import { unitChoices } from "@/lib/views/protocol/edit/vocabulary-choices";
import { Choice } from "./choice";
import { idOf, useEditor } from "./editor-tools";
import { Tick } from "./tick";
import { Wrong } from "./wrong";

/** What is counted, and of which canals. */
export function UnitPart(props: { criterion: EditedCriterion; isNew: boolean }) {
  const { criterion, isNew } = props;
  const { change } = useEditor();
  const { unit } = criterion;
  return (
    <div className="stack-tight">
      <div className="editor-sentence">
        <Choice
          id={idOf(["unit"])}
          label="It counts"
          seen
          value={unit}
          options={unitChoices}
          disabled={!isNew}
          change={(to) => change([], aboutUnit(criterion, to as EditedCriterion["unit"]))}
        />
      </div>
      <p className="hint">
        {isNew
          ? "Choose this first: another choice begins the conditions anew. It cannot be changed later."
          : "What it counts stays as it is, so that its figures can be compared over time."}
      </p>
      <Wrong at={["unit"]} />
      {unit === "visit" || unit === "chair-day" ? null : (
        <Tick
          id={idOf(["treatmentPopulation"])}
          words="Only canals that were prepared, at visits for first treatment or retreatment that were not abandoned"
          value={criterion.treatmentPopulation}
          change={(value) => change(["treatmentPopulation"], value)}
        />
      )}
      {unit === "chair-day" ? null : (
        <Tick
          id={idOf(["byClinician"])}
          words="Shown by clinician as well; leave it out for what staff and equipment do together"
          value={criterion.byClinician}
          change={(value) => change(["byClinician"], value)}
        />
      )}
    </div>
  );
}
