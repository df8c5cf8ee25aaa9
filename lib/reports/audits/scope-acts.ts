import { z } from "zod";
import { leadReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { changeAudit, setAside, setRestating } from "@/lib/store/audits/audits";
import { criteriaShown } from "../criteria-shown";
import { readInput } from "../read-input";
import { type Answer, dayTyped, inAudit, notOpen, type Typed, wordsTyped } from "./answer";
import { signAudit } from "./sign";

/** Chooses the criteria of the scope: every field `criterion-<id>` that is ticked. @throws Refused */
export async function chooseCriteria(viewer: Viewer, typed: Typed): Promise<Answer> {
  return inAudit(viewer, typed, async ({ reach, row, content }) => {
    const inForce = await criteriaShown(reach, [content.computed.period]);
    const criteria = inForce.map(({ id }) => id).filter((id) => typed[`criterion-${id}`] === "yes");
    if (criteria.length === 0)
      return {
        wrong: { form: "Choose at least one criterion: an audit holds practice against it." },
      };
    const kept = await changeAudit(leadReach(viewer), row.id, { criteria });
    return kept ? { done: "The scope is kept." } : notOpen;
  });
}

const window = z.object({ until: dayTyped("Choose the last day.") });

/** Opens the window in which clinicians confirm their records, or moves its last day. @throws Refused */
export async function openWindow(viewer: Viewer, typed: Typed): Promise<Answer> {
  return inAudit(viewer, typed, async ({ row }) => {
    const input = readInput(window, typed);
    if ("wrong" in input) return input;
    if (input.read.until < new Date().toISOString().slice(0, 10))
      return { wrong: { until: "Choose today or a later day: the window lasts until its end." } };
    const kept = await changeAudit(leadReach(viewer), row.id, { confirmUntil: input.read.until });
    return kept
      ? { done: "Open: every clinician with records in it finds it on their page." }
      : notOpen;
  });
}

/** Closes the window before its last day. @throws Refused */
export async function closeWindow(viewer: Viewer, typed: Typed): Promise<Answer> {
  return inAudit(viewer, typed, async ({ row }) => {
    const kept = await changeAudit(leadReach(viewer), row.id, { close: true });
    return kept ? { done: "Closed. It can be opened again until the audit is signed." } : notOpen;
  });
}

/** Signs. @throws Refused */
export async function sign(viewer: Viewer, typed: Typed): Promise<Answer> {
  return inAudit(viewer, typed, async ({ row }) => {
    if (typed.sure !== "yes")
      return { wrong: { sure: "Tick this to sign: what is signed is kept as it is." } };
    const signed = await signAudit(leadReach(viewer), row);
    if (signed === "not-open") return notOpen;
    if (signed === "missing")
      return { wrong: { form: "Something is missing still: load the page again to see what." } };
    if (signed === "records-changed")
      return {
        wrong: {
          form: "Records were brought in or changed while this was being signed. Look at the results again, then sign.",
        },
      };
    return { done: `Signed as version ${signed.version}. It is kept with its fingerprint.` };
  });
}

const restating = z.object({
  reason: wordsTyped("Say why: the reason stands in the restated version.", 500),
});

/** Opens a signed audit for a restated version. @throws Refused */
export async function restate(viewer: Viewer, typed: Typed): Promise<Answer> {
  return inAudit(viewer, typed, async ({ row }) => {
    const input = readInput(restating, typed);
    if ("wrong" in input) return input;
    const opened = await setRestating(leadReach(viewer), row.id, input.read.reason);
    return opened
      ? {
          done: "Open for a restated version: figures are those of today's records until it is signed.",
        }
      : { wrong: { form: "It is open for a restated version already, or was never signed." } };
  });
}

/** Leaves an audit as it was signed. @throws Refused */
export async function leaveAsSigned(viewer: Viewer, typed: Typed): Promise<Answer> {
  return inAudit(viewer, typed, async ({ row }) => {
    const left = await setRestating(leadReach(viewer), row.id, null);
    return left
      ? { done: "Left as it was signed." }
      : { wrong: { form: "It is not open for a restated version." } };
  });
}

/** Sets a draft aside, or takes it up again. @throws Refused */
export async function putAside(viewer: Viewer, typed: Typed): Promise<Answer> {
  return inAudit(viewer, typed, async ({ row }) => {
    const aside = typed.aside === "yes";
    const put = await setAside(leadReach(viewer), row.id, aside);
    if (!put)
      return {
        wrong: { form: "Only an audit that was never signed is set aside; load the page again." },
      };
    return { done: aside ? "Set aside. Nothing of it is lost." : "Taken up again." };
  });
}
