import type { AuditComputed } from "@/lib/audit/cycle/audit-content";
import { inOrderOfCodes, rowLabel } from "../interval-chart";
import { toldApart } from "../told-apart";

/** What each clinician of an audit is called, by key, in the order of the rota. */
export function clinicianNames(computed: AuditComputed): Map<string, string> {
  const figures = inOrderOfCodes(
    [...computed.adherence, ...computed.across, ...computed.own.map(({ figure }) => figure)].filter(
      ({ about }) => about.kind === "clinician",
    ),
  );
  const nameOf = toldApart(figures, ({ about }) => rowLabel(about));
  const names = new Map<string, string>();
  // Where a person has several codes, that of a measure may know but some of them: the longest speaks for all.
  for (const figure of figures) {
    if (figure.about.kind !== "clinician") continue;
    const known = names.get(figure.about.key);
    const name = nameOf(figure);
    if (known === undefined || known.length < name.length) names.set(figure.about.key, name);
  }
  return names;
}
