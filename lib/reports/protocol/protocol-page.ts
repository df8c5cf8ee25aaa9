import { protocolReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { ownTerms } from "@/lib/store/protocol/own-terms";
import { protocolWithin } from "@/lib/store/protocol/versions";
import type { PracticeRow } from "@/lib/store/records/practices";
import { type ProtocolView, protocolView } from "@/lib/views/protocol/protocol-view";
import { type TermGroup, termGroups } from "@/lib/views/protocol/term-lines";
import type { Address } from "../asked-period";
import { askedPractice } from "./asked-practice";

export type ProtocolPage = {
  readonly practices: readonly PracticeRow[];
  /** Null where there is no practice yet. */
  readonly shown: {
    readonly practice: PracticeRow;
    readonly view: ProtocolView;
    readonly terms: readonly TermGroup[];
    readonly mayChange: boolean;
    /** Does the viewer change the protocol of further practices. */
    readonly changesSeveral: boolean;
  } | null;
};

/** A practice's protocol as it is today, and its own terms. @throws Refused, AskedWrongly */
export async function protocolPage(viewer: Viewer, address: Address): Promise<ProtocolPage> {
  const reach = protocolReach(viewer);
  const { practices, practice, today, mayChange } = await askedPractice(reach, address);
  if (!practice) return { practices, shown: null };
  const [protocol, terms] = await Promise.all([protocolWithin(reach), ownTerms(reach)]);
  const changes = reach.changes === null ? practices.length : reach.changes.length;
  return {
    practices,
    shown: {
      practice,
      view: protocolView(protocol, practice.code, today),
      terms: termGroups(terms.filter((one) => one.practice === practice.code)),
      mayChange,
      changesSeveral: changes > 1,
    },
  };
}
