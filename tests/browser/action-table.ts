import type { Known, Somebody } from "./everybody";
import { ownActions } from "./own-actions";

/** An action as it could be called past its form. */
export interface Call {
  action: string;
  /** A page that it belongs to. */
  address: string;
  form: Record<string, string>;
  /** Those of the role; everybody else is refused. */
  role: readonly Somebody[];
  /** Of the role, but this lies outside their practice: a sentence says that it is not theirs, or not there. */
  beyond?: Somebody;
}

const administrators = ["administrator", "SPINDLE administrator"] as const;
export const leads = ["group lead", "MEDLAR lead"] as const;
const officers = ["quality officer", "SPINDLE quality officer"] as const;
const clinicians = ["clinician M-03", "clinician M-06"] as const;
const keepers = ["record keeper", "SPINDLE record keeper"] as const;
const email = "smuggled-in@tests.example";

/** A criterion that could be put in force as it is. */
const smuggled = {
  ...{ id: "isolation", title: "Smuggled", statement: "-", rationale: "-", source: "-" },
  ...{ unit: "visit", treatmentPopulation: false, population: { all: [] }, exclusions: [] },
  ...{ met: { field: "step/dam", is: "done" }, exceptions: null, target: 1, targetSource: "-" },
  ...{ completenessFloor: null, byClinician: true },
};

/** Every server action but the sign-in, as it could be called. */
export function calls({ people, imports, held, visit, audits }: Known): Call[] {
  const person = `/administration/person/${people.lead}`;
  const persons = (name: string, form: Record<string, string>): Call => ({
    ...{ action: `app/administration/acts.ts ${name}`, address: person, role: administrators },
    ...{ form: { person: people.lead, ...form }, beyond: "SPINDLE administrator" as const },
  });
  const practices = (name: string, form: Record<string, string>): Call => ({
    ...{
      action: `app/administration/practices/acts.ts ${name}`,
      address: "/administration/practices",
      role: administrators,
    },
    ...{ form: { practice: "MEDLAR", ...form }, beyond: "SPINDLE administrator" as const },
  });
  const lines = (name: string, form: Record<string, string>): Call => ({
    action: `app/lead/measures/acts.ts ${name}`,
    address: "/lead/measures/volume",
    role: leads,
    form: { measure: "volume", period: "2026-Q2", practice: "SPINDLE", whose: "", ...form },
    beyond: "MEDLAR lead",
  });
  const rows = (name: string, form: Record<string, string>): Call => ({
    ...{ action: `app/records/acts.ts ${name}`, address: "/records/held", role: keepers, form },
  });
  const waiting = (name: string, form: Record<string, string>): Call => ({
    action: `app/records/waiting/acts.ts ${name}`,
    ...{ address: "/records/waiting", role: keepers, form },
  });
  const bench = (name: string, form: Record<string, string>): Call => ({
    ...{ action: `app/records/held/acts.ts ${name}`, address: "/records/held/mends" },
    ...{ role: keepers, form },
  });
  const mappings = (name: string, form: Record<string, string>): Call => ({
    action: `app/records/mappings/acts.ts ${name}`,
    ...{ address: "/records/mappings", role: keepers, form },
  });
  const corrections = (name: string, form: Record<string, string>): Call => ({
    ...{ action: `app/records/corrections/acts.ts ${name}`, address: "/records/corrections" },
    ...{ role: keepers, form },
  });
  const exceptions = (
    name: string,
    session: string,
    form: Record<string, string>,
    of: Pick<Call, "role" | "beyond">,
  ): Call => ({
    ...{ action: `app/exceptions/acts.ts ${name}`, address: "/exceptions", ...of },
    form: {
      practice: session === visit.spindle ? "SPINDLE" : "MEDLAR",
      ...{ session, criterion: "isolation", canal: "", ...form },
    },
  });
  const protocol = (name: string, form: Record<string, string>): Call => ({
    ...{ action: `app/protocol/acts.ts ${name}`, address: "/protocol", ...ofLeads },
    form: { practice: "SPINDLE", practices: '["SPINDLE"]', isNew: "", ...form },
  });
  const audit = (name: string, form: Record<string, string>): Call => ({
    ...{ action: `app/audits/acts.ts ${name}`, address: "/audits", role: leads },
    form: { audit: String(audits.group), ...form },
  });
  const prepared = (name: string, form: Record<string, string>): Call => ({
    ...{ action: `app/quality/acts.ts ${name}`, address: "/quality/prepared", role: officers },
    form,
  });
  const ownAudit = (name: string, form: Record<string, string>): Call => ({
    ...{ action: `app/clinician/audits/acts.ts ${name}`, address: "/clinician/audits" },
    ...{ role: clinicians, form: { audit: String(audits.group), ...form } },
  });
  const ofClinicians = { role: clinicians, beyond: "clinician M-06" } as const;
  const ofLeads = { role: leads, beyond: "MEDLAR lead" } as const;
  const dated = { from: "2199-01-01", reason: "Smuggled in." };
  const term = { kind: "step", code: "own-smuggled", words: "Smuggled" };
  return [
    { ...audit("beginAuditAct", { practice: "", period: "2026-Q2" }), beyond: "MEDLAR lead" },
    audit("reAuditAct", {}),
    audit("chooseCriteriaAct", { "criterion-isolation": "yes" }),
    audit("openWindowAct", { until: "2199-01-01" }),
    audit("closeWindowAct", {}),
    audit("answerDisputeAct", { dispute: "1", answer: "Smuggled in." }),
    audit("endLookAct", { flag: "volume practice MEDLAR", step: "person" }),
    audit("agreeActionAct", {
      ...{ measure: "", what: "Smuggled", why: "-", owner: people.lead },
      ...{ due: "2199-01-01", know: "-" },
    }),
    { ...audit("scheduleAuditAct", { practice: "" }), beyond: "MEDLAR lead" },
    audit("endAuditScheduleAct", { schedule: "1" }),
    prepared("scheduleReportAct", { practice: "", format: "pdf" }),
    prepared("endReportScheduleAct", { schedule: "1" }),
    audit("signAct", { sure: "yes" }),
    audit("restateAct", { reason: "Smuggled in." }),
    audit("leaveAsSignedAct", {}),
    audit("putAsideAct", { aside: "yes" }),
    audit("tellActionAct", { action: "999999999", state: "done", text: "Smuggled in." }),
    ownAudit("confirmOwnAct", { confirmed: "yes" }),
    ownAudit("disputeOwnAct", { visit: `MEDLAR/${visit.own}`, kind: "wrong", note: "Smuggled" }),
    ownAudit("withdrawOwnAct", { dispute: "1" }),
    ownAudit("answerAuditAct", { text: "Smuggled in." }),
    ownAudit("reflectAct", { text: "Smuggled in." }),
    protocol("putInForceAct", { ...dated, criterion: JSON.stringify(smuggled) }),
    protocol("previewAct", { criterion: JSON.stringify(smuggled) }),
    protocol("endCriterionAct", { ...dated, id: "isolation" }),
    protocol("withdrawVersionAct", { version: "1" }),
    protocol("addTermAct", { ...term, where: "here" }),
    protocol("rewordTermAct", term),
    protocol("retireTermAct", { ...term, retired: "yes" }),
    exceptions("enterExceptionAct", visit.own, { reason: "not-possible", note: "" }, ofClinicians),
    exceptions("withdrawExceptionAct", visit.own, {}, ofClinicians),
    exceptions("answerAct", visit.own, { answer: "Smuggled in." }, ofClinicians),
    exceptions("askAct", visit.spindle, { question: "Smuggled in." }, ofLeads),
    exceptions("closeAct", visit.spindle, {}, ofLeads),
    {
      ...persons("addPersonAct", {
        name: "Smuggled",
        email,
        role: "administrator",
        practice: "",
        clinicianKey: "",
      }),
      address: "/administration",
    },
    persons("giveRoleAct", { role: "administrator", practice: "", clinicianKey: "" }),
    persons("takeRoleAct", { grant: "1" }),
    persons("resetPasswordAct", {}),
    persons("takeSecondFactorAct", {}),
    persons("removePersonAct", {}),
    persons("leavePersonAct", { sure: "yes" }),
    { ...persons("changeSecondFactorRuleAct", { rule: "not yet" }), address: "/administration" },
    ...ownActions(),
    practices("changePracticeAct", { name: "Smuggled Lane", zone: "Europe/London" }),
    practices("confirmCodesAct", { kind: "chair", code: "MEDLAR-1" }),
    {
      action: "app/administration/levels/acts.ts changeFlagLevelsAct",
      address: "/administration/levels",
      role: administrators,
      form: { look: "20", lookFirst: "5", reason: "Smuggled in." },
      beyond: "SPINDLE administrator",
    },
    lines("setRebaseAct", { month: "2026-01", reason: "Smuggled in." }),
    lines("takeRebaseBackAct", { id: "1" }),
    {
      ...rows("undoAct", { import: String(imports.medlar), sure: "yes" }),
      beyond: "SPINDLE record keeper",
    },
    rows("cancelAct", { import: String(imports.medlar) }),
    rows("goOnAct", { import: String(imports.medlar), how: "go on" }),
    waiting("bringWaitingAct", { file: "1" }),
    waiting("dropWaitingAct", { file: "1" }),
    waiting("keepWaitingMappingAct", { file: "1" }),
    waiting("readByKeptAct", { file: "1", name: "Smuggled" }),
    waiting("lookAnewAct", { file: "1", headerLine: "2" }),
    mappings("bringMappingAct", { mapping: "{}" }),
    mappings("retireMappingAct", { name: "Smuggled", retired: "yes" }),
    mappings("changeMappingAct", { mapping: "{}" }),
    rows("letGoAct", { row: held.medlar, reason: "Smuggled in." }),
    rows("takeBackAct", { row: held.medlar }),
    bench("mendAlikeAct", {
      ...{ table: "irrigation", change: "irrigant", how: "to", choice: "naocl" },
      ...{ some: "yes", row: held.medlar },
    }),
    bench("mendOneAct", { id: held.medlar, row: held.medlar, "cell-chair": "MEDLAR-1" }),
    bench("takeMendBackAct", { mend: "1" }),
    corrections("settleDifferencesAct", { row: held.medlar, how: "newer" }),
    corrections("takeCorrectionBackAct", { correction: "1" }),
    {
      ...corrections("setRuleAct", { practice: "MEDLAR", rule: "ask" }),
      beyond: "SPINDLE record keeper",
    },
    {
      ...{
        action: "app/clinician/acts.ts keepNoteAct",
        address: "/clinician",
        role: clinicians,
      },
      form: { quarter: "2025-Q1", text: "Smuggled in." },
    },
  ];
}
