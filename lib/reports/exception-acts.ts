import { z } from "zod";
import { leadReach, ownReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { enterException, withdrawException } from "@/lib/store/exceptions/entered";
import type { ExceptionKey } from "@/lib/store/exceptions/exception-key";
import { exceptionsAt } from "@/lib/store/exceptions/exception-list";
import { answerQuery, askAbout, closeQuery } from "@/lib/store/exceptions/queries";
import { ownWork } from "@/lib/store/exceptions/whose-work";
import { protocolWithin } from "@/lib/store/protocol/versions";
import { visitHead } from "@/lib/store/visit/visit-head";
import { reasonsOffered } from "@/lib/views/exception-reason";
import { criterionOnDay, exceptedSteps } from "./criterion-on-day";
import { unitsOffered } from "./exception-units-offered";
import { ownReasons } from "./own-reasons";
import { readInput, type Wrong } from "./read-input";

type Answer = { readonly done?: string; readonly wrong?: Wrong };
type Typed = Readonly<Record<string, string>>;

const longest = 500;
// No database takes a NUL in a text.
const plain = z
  .string()
  .max(200)
  .regex(/^[^\0]*$/);
const keyed = z.object({ practice: plain, session: plain, criterion: plain, canal: plain });
const free = z
  .string()
  .trim()
  .max(longest, `Say it in no more than ${longest} characters.`)
  .regex(/^[^\0]*$/);
const said = free.min(3, "Say it in a few words.");
const entry = z.object({ reason: plain.min(1, "Choose a reason."), note: free.default("") });

/** Enters an exception for the viewer's own work, or puts another reason in its place. @throws Refused */
export async function enterOwnException(viewer: Viewer, typed: Typed): Promise<Answer> {
  const reach = ownReach(viewer);
  const key = keyOf(typed);
  const head = await visitHead(reach, key.practice, key.sessionId);
  if (!head) return { wrong: { form: "There is no such visit." } };
  const [protocol, reasons, work] = await Promise.all([
    protocolWithin(reach),
    ownReasons(reach),
    ownWork(reach, head),
  ]);
  const criterion = criterionOnDay(protocol, key.criterion, head.practice, head.day);
  if (!criterion?.exceptions)
    return { wrong: { form: "That criterion foresees no exception on the day of the visit." } };
  if (!unitsOffered(criterion, work).includes(key.canal))
    return { wrong: { canal: "Choose a unit that is your own work." } };
  const read = readInput(entry, typed);
  if ("wrong" in read) return read;
  const { reason, note } = read.read;
  const known = reasonsOffered(criterion, head.practice, reasons);
  if (!known.some(({ value }) => value === reason))
    return { wrong: { reason: "Choose a reason from the list." } };
  const stored = await enterException(reach, key, {
    userId: viewer.userId,
    reason,
    note: note || null,
  });
  return stored === "entered"
    ? {
        done: "The exception is entered. It counts where the unit is not met, and can be withdrawn.",
      }
    : { wrong: { form: "The records hold an exception of this unit already; that one stands." } };
}

/** Withdraws an exception that was entered for the viewer's own work. @throws Refused */
export async function withdrawOwnException(viewer: Viewer, typed: Typed): Promise<Answer> {
  return (await withdrawException(ownReach(viewer), keyOf(typed)))
    ? { done: "The exception is withdrawn." }
    : { wrong: { form: "It was withdrawn already; load the page again." } };
}

/** Asks about an exception in a practice of the lead's. @throws Refused */
export async function askAboutException(viewer: Viewer, typed: Typed): Promise<Answer> {
  const reach = leadReach(viewer);
  const key = keyOf(typed);
  const head = await visitHead(reach, key.practice, key.sessionId);
  const read = readInput(z.object({ question: said }), typed);
  if ("wrong" in read) return read;
  const there = head
    ? await exceptionsAt(reach, exceptedSteps(await protocolWithin(reach)), head, key.criterion)
    : [];
  if (!there.some(({ canal }) => canal === key.canal))
    return { wrong: { form: "There is no such exception any more; load the page again." } };
  return (await askAbout(reach, key, read.read.question))
    ? { done: "The question is asked; the clinician sees it under Exceptions." }
    : { wrong: { form: "A question about it is open already; load the page again." } };
}

/** Answers what was asked about the viewer's own work. @throws Refused */
export async function answerAboutException(viewer: Viewer, typed: Typed): Promise<Answer> {
  const reach = ownReach(viewer);
  const key = keyOf(typed);
  const read = readInput(z.object({ answer: said }), typed);
  if ("wrong" in read) return read;
  return (await answerQuery(reach, key, read.read.answer))
    ? { done: "The answer is given; the lead sees it." }
    : { wrong: { form: "No question waits for an answer; load the page again." } };
}

/** Closes what was asked in a practice of the lead's. @throws Refused */
export async function closeExceptionQuery(viewer: Viewer, typed: Typed): Promise<Answer> {
  return (await closeQuery(leadReach(viewer), keyOf(typed)))
    ? { done: "The question is closed." }
    : { wrong: { form: "It was closed already; load the page again." } };
}

function keyOf(typed: Typed): ExceptionKey {
  const { session, ...rest } = keyed.parse({ canal: "", ...typed });
  return { ...rest, sessionId: session };
}
