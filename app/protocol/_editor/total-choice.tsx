"use client";

import type { About } from "@/lib/views/protocol/about";
import type { Path } from "@/lib/views/protocol/edit/at-path";
import {
  type TotalEnd,
  totalEndOf,
  totalEnds,
  withTotalEnd,
  withTotalLimit,
} from "@/lib/views/protocol/edit/list-sentences";
import { numbersOf } from "@/lib/views/protocol/edit/vocabulary-choices";
import { type Part, wrappersOf } from "@/lib/views/protocol/part";
import { unitOf } from "@/lib/views/protocol/value-words";
import { Choice } from "./choice";
import { idOf } from "./editor-tools";
import { NumberBox } from "./number-box";
import { Ticks } from "./ticks";
import { Wrong } from "./wrong";

/** What is added up, and the limit of the total. */
export function TotalChoice(props: {
  at: Path;
  part: Part;
  about: About;
  put: (part: Part, how?: { typing?: boolean }) => void;
}) {
  const { at, part, put } = props;
  const { core } = part;
  const { list, own } = props.about;
  if (!("total" in core) || !list) return null;
  const limit = "atLeast" in core ? core.atLeast : core.atMost;
  const unit = unitOf(list.fields.find(({ name }) => name === core.total[0])?.unit).trim();
  return (
    <>
      <Ticks
        id={idOf(at, "total")}
        legend="Added up"
        options={numbersOf(list, own)}
        chosen={core.total}
        change={(total) => put({ ...part, core: { ...core, total } })}
      />
      <div className="editor-sentence">
        <span>together</span>
        <Choice
          id={idOf(at, "end")}
          label="The total is"
          value={totalEndOf(part)}
          options={totalEnds}
          change={(to) => put(withTotalEnd(part, to as TotalEnd))}
        />
        <NumberBox
          id={idOf(at, "limit")}
          label="Limit of the total"
          value={limit}
          {...(unit ? { unit } : {})}
          change={(value) => put(withTotalLimit(part, value), { typing: true })}
        />
      </div>
      {["total", "atLeast", "atMost"].map((key) => (
        <Wrong key={key} at={[...at, ...wrappersOf(part), key]} />
      ))}
    </>
  );
}
