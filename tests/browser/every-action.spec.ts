import { expect, test } from "@playwright/test";
import { callAction } from "./action-calls";
import { everybody, type Known, known, type Somebody, type Who } from "./everybody";
import { serverActions } from "./project-pages";

// Expected values are the project's own rules of who may do what.

test.describe.configure({ mode: "parallel" });

/** An action as it could be called past its form. */
interface Call {
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
const leads = ["group lead", "MEDLAR lead"] as const;
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

function calls({ people, imports, held, visit }: Known): Call[] {
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
  const ofClinicians = { role: clinicians, beyond: "clinician M-06" } as const;
  const ofLeads = { role: leads, beyond: "MEDLAR lead" } as const;
  const dated = { from: "2199-01-01", reason: "Smuggled in." };
  const term = { kind: "step", code: "own-smuggled", words: "Smuggled" };
  return [
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
    persons("removePersonAct", {}),
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

test("Every server action is tried by whoever may not; the sign-in's is open to all", () => {
  const tried = calls(known()).map(({ action }) => action);
  expect([...tried, "app/sign-in/enter.ts enter"].sort()).toEqual(serverActions().sort());
});

for (const who of ["nobody", ...everybody] as const) {
  test(`No action of another role is done for ${who}`, async () => {
    for (const call of calls(known())) {
      if (who !== "nobody" && call.role.includes(who)) continue;
      expect
        .soft(await outcomeFor(who, call), `${call.action} as ${who}`)
        .toBe(who === "nobody" ? "sign in" : "refused");
    }
  });
}

test("No action reaches beyond the practice of whoever calls it", async () => {
  for (const call of calls(known())) {
    if (call.beyond) expect.soft(await outcomeFor(call.beyond, call), call.action).toBe("refused");
  }
});

test("A held row of another practice is passed over", async () => {
  for (const call of calls(known()).filter(({ form }) => form.row)) {
    const answer = await callAction("SPINDLE record keeper", call.action, call.address, call.form);
    expect(await answer.text(), call.action).toMatch(
      /"done":"0 (rows|newer versions) (let go|taken)|No row was left to mend|This row is held no longer/,
    );
  }
});

test("An action that is called from another site is not done", async () => {
  const [call] = calls(known());
  if (!call) throw new Error("There is no action.");
  const answer = await callAction(
    "administrator",
    call.action,
    call.address,
    call.form,
    "https://elsewhere.example",
  );
  expect(answer.status()).toBeGreaterThanOrEqual(400);
  expect(await answer.text()).not.toContain('"done"');
});

async function outcomeFor(who: Who, { action, address, form }: Call): Promise<string> {
  const answer = await callAction(who, action, address, form);
  const text = await answer.text();
  const leads = answer.headers().location ?? answer.headers()["x-action-redirect"] ?? "";
  if (leads.includes("/sign-in")) return "sign in";
  const sentences = [
    ...["not one of your roles", "a clinician's own", "what concerns the whole group is for"],
    ...["is not among them", "not yours to change", "a role outside the practices"],
    ...["is not yours to see", "only an administrator of all practices", "is none of yours"],
  ];
  return sentences.some((sentence) => text.includes(sentence))
    ? "refused"
    : `${answer.status()} ${leads} ${text.slice(0, 300)}`;
}
