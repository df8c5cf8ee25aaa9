import { leadReach, protocolReach } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import type { Viewer } from "@/lib/access/viewer";
import { ownTerms } from "@/lib/store/protocol/own-terms";
import { protocolWithin } from "@/lib/store/protocol/versions";
import { dataState } from "@/lib/store/quality/data-state";
import { practicesWithin } from "@/lib/store/records/practices";
import { criterionState } from "@/lib/views/protocol/criterion-state";
import { type EditorView, editorView } from "@/lib/views/protocol/editor-view";
import { type Address, AskedWrongly } from "../asked-period";
import { askedPractice } from "./asked-practice";

/**
 * What the editor begins with: a criterion of the practice, or (null) a new one; null where the practice has no such
 * criterion. @throws Refused where the protocol is not the viewer's to change; AskedWrongly
 */
export async function editorPage(
  viewer: Viewer,
  id: string | null,
  address: Address,
): Promise<EditorView | null> {
  const lead = leadReach(viewer);
  const reach = protocolReach(viewer);
  const { practice, today, mayChange } = await askedPractice(reach, address);
  if (!practice) return null;
  if (!mayChange)
    throw new Refused(`The protocol of practice ${practice.code} is not yours to change.`);
  const [protocol, terms, practices, { firstDay, lastDay }] = await Promise.all([
    protocolWithin(lead),
    ownTerms(lead),
    practicesWithin(lead),
    dataState(lead),
  ]);
  const state =
    id === null ? null : criterionState(protocol, { id, practice: practice.code, today });
  if (state === undefined) {
    if (protocol.versions.some(({ criterion }) => criterion.id === id))
      throw new AskedWrongly(`${practice.name} has no such criterion; another practice has.`);
    return null;
  }
  return editorView({
    state,
    practice,
    practices,
    terms: terms.filter((one) => one.practice === practice.code),
    today,
    firstDay,
    lastDay,
  });
}
