import { AsyncLocalStorage } from "node:async_hooks";
import type { Viewer } from "@/lib/access/viewer";
import { type Told, toldOf } from "./told-sql";

/** As whom the database is asked: the holder of the home's files, or somebody of whom it is told in every transaction. */
export type Whom = "holder" | { readonly told: Told; readonly sql: string };

/** Next loads modules more than once; as whom is asked is one thing a process. */
const kept = globalThis as { canalAuditWhom?: AsyncLocalStorage<Whom> };
kept.canalAuditWhom ??= new AsyncLocalStorage<Whom>();
const storage = kept.canalAuditWhom;

/** As whom is asked here; undefined where nobody was named, who is shown nothing. */
export function whom(): Whom | undefined {
  return storage.getStore();
}

/** Asks as a viewer: the database shows what any of their roles may see, whatever is asked. */
export function asViewer<Answer>(
  { userId, grants }: Viewer,
  work: () => Answer | Promise<Answer>,
): Promise<Answer> {
  return told({ as: "viewer", person: userId, grants }, work);
}

/** Asks before it is known who asks: accounts, sessions and whose a clinician's code is; no records. */
export function asSigningIn<Answer>(work: () => Answer | Promise<Answer>): Promise<Answer> {
  return told({ as: "signing in", person: "", grants: [] }, work);
}

/** Asks as whoever holds the home's files, past the wall: the command line, and nothing that answers a request. */
export function asHolder<Answer>(work: () => Answer | Promise<Answer>): Promise<Answer> {
  // Awaited within: a query of Prisma's begins when somebody waits for it.
  return storage.run("holder", async () => await work());
}

/** Reads records beyond the viewer's own, for counts and order statistics of others that tell nobody apart, and for masks. */
export function comparing<Answer>(work: () => Promise<Answer>): Promise<Answer> {
  return beyond("comparing", work);
}

/** Reads all records, as what arrives is judged by all that is there; writes those of the viewer's practices alone. */
export function publishing<Answer>(work: () => Promise<Answer>): Promise<Answer> {
  return beyond("publishing", work);
}

/** Reads what is kept about a person, wherever it stands. */
export function handingOut<Answer>(work: () => Promise<Answer>): Promise<Answer> {
  return beyond("handing out", work);
}

/** Goes beyond what the viewer may see: only from a viewer, so that nobody is still shown nothing. */
function beyond<Answer>(as: Told["as"], work: () => Promise<Answer>): Promise<Answer> {
  const now = whom();
  return now === undefined || now === "holder" ? work() : told({ ...now.told, as }, work);
}

function told<Answer>(of: Told, work: () => Answer | Promise<Answer>): Promise<Answer> {
  return storage.run({ told: of, sql: toldOf(of) }, async () => await work());
}
