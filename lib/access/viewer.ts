import type { Role } from "./role";

/** One role of a person; `practice` null is the whole group. */
export type Grant = {
  readonly role: Role;
  readonly practice: string | null;
  /** Role clinician: whose figures are theirs, as the key of a clinician's figures. */
  readonly clinicianKey: string | null;
};

/** The person asking. */
export type Viewer = {
  readonly userId: string;
  readonly name: string;
  readonly email: string;
  readonly grants: readonly Grant[];
  /** What this person has to do before anything is open to them; until then no grant is theirs. */
  readonly due?: Due;
};

/** Change a password that another passed on; set up the second factor that their role asks for. */
export type Due = "password" | "second factor";
