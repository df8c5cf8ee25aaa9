import { expect, test } from "@playwright/test";
import { callAction } from "./action-calls";
import { type Call, calls, leads } from "./action-table";
import { everybody, known, type Who } from "./everybody";
import { serverActions } from "./project-pages";

// Expected values are the project's own rules of who may do what.

test.describe.configure({ mode: "parallel" });

test("Every server action is tried by whoever may not; the sign-in's is open to all", () => {
  const tried = calls(known()).map(({ action }) => action);
  expect(
    [...tried, "app/sign-in/enter.ts enter", "app/sign-in/enter.ts enterSecond"].sort(),
  ).toEqual(serverActions().sort());
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

test("An audit beyond one's reach is answered as one that is not there", async () => {
  for (const call of calls(known()).filter(
    ({ form, action }) => form.audit && !form.period && !action.includes("chedule"),
  )) {
    const who = call.role === leads ? "MEDLAR lead" : "clinician M-03";
    const answer = await callAction(who, call.action, call.address, call.form);
    expect(await answer.text(), call.action).toMatch(
      /There is no such (audit (among those you run|that concerns you)|action among those)/,
    );
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
    ...["is for a clinical lead of the group", "is not yours to prepare for"],
    // Behind the wall it is as if there were none.
    "This import is not there to undo",
  ];
  return sentences.some((sentence) => text.includes(sentence))
    ? "refused"
    : `${answer.status()} ${leads} ${text.slice(0, 300)}`;
}
