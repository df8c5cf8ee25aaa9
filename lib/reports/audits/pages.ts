import type { Viewer } from "@/lib/access/viewer";
import { toLookAt } from "@/lib/audit/cycle/to-look-at";
import type { Figure } from "@/lib/audit/figure";
import { actionsWithin, possibleOwners } from "@/lib/store/audits/actions";
import { responsesTo } from "@/lib/store/audits/confirming";
import { type ActionLine, actionLine } from "@/lib/views/audits/action-lines";
import { type AuditHead, auditHead } from "@/lib/views/audits/audit-head";
import {
  type ConfirmingView,
  confirmingSummary,
  confirmingView,
} from "@/lib/views/audits/confirming-view";
import { type DataCheckView, dataView } from "@/lib/views/audits/data-view";
import { type LookItem, lookItems } from "@/lib/views/audits/look-view";
import { type MissingLine, missingLines } from "@/lib/views/audits/missing-words";
import {
  type ActedOnLine,
  actedOnLines,
  beforeAndNow,
  resultsView,
} from "@/lib/views/audits/results-view";
import { type TextField, textField } from "@/lib/views/audits/text-field";
import { dataTextKey, type TextKey } from "@/lib/views/audits/text-keys";
import type { LeadQuarter } from "@/lib/views/lead-quarter";
import { titleOf } from "@/lib/views/measure-words";
import { periodWords } from "@/lib/views/period-words";
import { setShare } from "@/lib/views/quantity";
import { criteriaShown } from "../criteria-shown";
import { type AuditAt, auditAt } from "./audit-at";

/** A page of an audit: what stands above each of them, and its own. */
export type AuditPage<Own> = Own & { readonly head: AuditHead };

type Asked = readonly [viewer: Viewer, id: string];

/** The texts that are asked for on every audit, by their key. */
const asks: Readonly<Record<TextKey, { label: string; hint: string }>> = {
  purpose: {
    label: "Why this audit",
    hint: "What is to be found out, and what led to it. One or two sentences.",
  },
  data: {
    label: "Anything else about the records",
    hint: "What a reader must know of how they came in.",
  },
  results: {
    label: "What the results come to",
    hint: "In your own words; figures stand beside it.",
  },
  "no-actions": {
    label: "Why no action is needed",
    hint: "Only where none is agreed.",
  },
  summary: {
    label: "Summary",
    hint: "For whoever reads one page: what was found, and what it means for patients.",
  },
  recommendation: {
    label: "Recommendation",
    hint: "What the practice should do, keep or stop.",
  },
};

/** What every page of an audit shares; null where there is none within the viewer's reach. @throws Refused */
async function on<Own>(
  [viewer, id]: Asked,
  own: (audit: AuditAt) => Own | Promise<Own>,
): Promise<AuditPage<Own> | null> {
  const audit = await auditAt(viewer, id);
  if (!audit) return null;
  return { head: auditHead(audit.row, audit.open, audit.missing), ...(await own(audit)) };
}

function field({ content }: AuditAt, key: TextKey): TextField {
  return textField(content.work, { key, ...asks[key] });
}

const todayIs = () => new Date().toISOString().slice(0, 10);

export type ScopePage = AuditPage<{
  readonly purpose: TextField;
  readonly period: string;
  readonly practices: string;
  readonly criteria: readonly {
    readonly id: string;
    readonly title: string;
    readonly target: string;
    readonly chosen: boolean;
  }[];
  readonly before: { readonly id: number; readonly words: string } | null;
  readonly earlier: readonly ActionLine[];
}>;

export const scopePage = (...asked: Asked): Promise<ScopePage | null> =>
  on(asked, async (audit) => {
    const { computed, form, work } = audit.content;
    const inForce = audit.open
      ? await criteriaShown(audit.reach, [computed.period])
      : computed.criteria;
    return {
      purpose: field(audit, "purpose"),
      period: periodWords(computed.period),
      practices: computed.practices.map(({ code, name }) => `${name} (${code})`).join(", "),
      criteria: inForce.map(({ id, title, target }) => ({
        ...{ id, title, target: setShare(target) },
        chosen: form.criteria.includes(id),
      })),
      before:
        form.previous !== null && computed.earlier
          ? { id: form.previous, words: periodWords(computed.earlier.period) }
          : null,
      earlier: work.earlier.map((one) => actionLine(one, todayIs())),
    };
  });

export type DataPage = AuditPage<{
  readonly view: DataCheckView;
  readonly fields: readonly TextField[];
  readonly data: TextField;
}>;

export const dataPage = (...asked: Asked): Promise<DataPage | null> =>
  on(asked, (audit) => {
    const { computed, work, signed } = audit.content;
    const view = dataView(computed, signed?.at.slice(0, 10) ?? todayIs());
    return {
      view,
      data: field(audit, "data"),
      fields: view.findings.map(({ id, words }) =>
        textField(work, { key: dataTextKey(id), label: "What is made of it", hint: words }),
      ),
    };
  });

export type ResultsPage = AuditPage<{
  readonly view: LeadQuarter;
  /** How many confirmed, and what is disputed of the records behind the figures. */
  readonly confirming: string;
  readonly disputed: boolean;
  readonly results: TextField;
  readonly since: { readonly words: string; readonly lines: readonly ActedOnLine[] } | null;
}>;

export const resultsPage = (...asked: Asked): Promise<ResultsPage | null> =>
  on(asked, (audit) => {
    const { content } = audit;
    const words = beforeAndNow(content);
    return {
      view: resultsView(content),
      confirming: confirmingSummary(content),
      disputed: content.work.disputes.length > 0,
      results: field(audit, "results"),
      since: words ? { words, lines: actedOnLines(content) } : null,
    };
  });

export type ConfirmingPage = AuditPage<{ readonly view: ConfirmingView }>;

export const confirmingPage = (...asked: Asked): Promise<ConfirmingPage | null> =>
  on(asked, async ({ reach, row, content }) => ({
    view: confirmingView(content, await responsesTo(reach, row.id), todayIs()),
  }));

export type LookPage = AuditPage<{ readonly items: readonly LookItem[] }>;

export const lookPage = (...asked: Asked): Promise<LookPage | null> =>
  on(asked, ({ content }) => ({ items: lookItems(content) }));

export type ActionsPage = AuditPage<{
  readonly lines: readonly ActionLine[];
  readonly noActions: TextField;
  readonly owners: readonly { readonly value: string; readonly words: string }[];
  readonly measures: readonly { readonly value: string; readonly words: string }[];
}>;

export const actionsPage = (...asked: Asked): Promise<ActionsPage | null> =>
  on(asked, async (audit) => {
    const { reach, row, content } = audit;
    // What became of actions goes on after signing: it is read as it stands.
    const actions = (await actionsWithin(reach)).filter(({ audit: of }) => of === row.id);
    const owners = await possibleOwners(reach, row.practice);
    return {
      lines: actions.map((one) => actionLine(one, todayIs())),
      noActions: field(audit, "no-actions"),
      owners: owners.map(({ id, name }) => ({ value: id, words: name })),
      measures: measuresToActOn([...content.computed.adherence, ...content.computed.measures]),
    };
  });

function measuresToActOn(figures: readonly Figure[]) {
  const named = new Map(figures.map((figure) => [figure.measure, titleOf(figure)]));
  return [...named].map(([value, words]) => ({ value, words }));
}

export type SignaturePage = AuditPage<{
  readonly missing: readonly MissingLine[];
  readonly summary: TextField;
  readonly recommendation: TextField;
  readonly aside: boolean;
  readonly restating: boolean;
}>;

export const signaturePage = (...asked: Asked): Promise<SignaturePage | null> =>
  on(asked, (audit) => ({
    missing: audit.open ? missingLines(audit.missing, toLookAt(audit.content.computed)) : [],
    summary: field(audit, "summary"),
    recommendation: field(audit, "recommendation"),
    aside: audit.row.setAsideBy !== null,
    restating: audit.row.restate !== null,
  }));
