import { commandLine } from "../records/log-line";
import { Refused } from "./refused";
import type { Role } from "./role";
import type { Viewer } from "./viewer";

/**
 * What a viewer may see or do, as the first argument of every read. The classes have protected fields and are not
 * exported, so only this file makes a reach and forgetting permission does not compile. `practices` null is all.
 */
class FiguresOfAll {
  protected readonly made = true;
  constructor(
    readonly by: string,
    readonly practices: readonly string[] | null,
    /** May figures be told apart by clinician. */
    readonly byClinician: boolean,
  ) {}
}

class FiguresOfOne {
  protected readonly made = true;
  constructor(
    readonly by: string,
    readonly clinicianKey: string,
  ) {}
}

class Records {
  protected readonly made = true;
  constructor(
    readonly by: string,
    readonly practices: readonly string[] | null,
    /** Account by whose doing it is, or what acts without one: for the log, which holds no names. */
    readonly person: string,
  ) {}
}

class People {
  protected readonly made = true;
  constructor(
    readonly by: string,
    readonly practices: readonly string[] | null,
  ) {}
}

class Protocols {
  protected readonly made = true;
  constructor(
    readonly by: string,
    readonly practices: readonly string[] | null,
    /** The practices whose protocol the viewer may change, as their clinical lead; null is all, empty is none. */
    readonly changes: readonly string[] | null,
  ) {}
}

class OwnNotes {
  protected readonly made = true;
  constructor(
    readonly userId: string,
    readonly by: string,
  ) {}
}

/** The figures of practices. */
export type FiguresReach = FiguresOfAll;
/** A clinician's own figures. */
export type OwnReach = FiguresOfOne;
/** Bringing records in, held rows. */
export type RecordsReach = Records;
/** People and practices. */
export type PeopleReach = People;
/** The protocols of practices. */
export type ProtocolReach = Protocols;
/** A person's private notes, and what they own themselves. */
export type NotesReach = OwnNotes;

/** The clinical lead's: every clinician of their practices. */
export function leadReach(viewer: Viewer): FiguresReach {
  return new FiguresOfAll(viewer.name, practicesAs(viewer, "clinical-lead"), true);
}

/** The quality officer's: practices and chairs, no clinicians. */
export function qualityReach(viewer: Viewer): FiguresReach {
  return new FiguresOfAll(viewer.name, practicesAs(viewer, "quality-officer"), false);
}

/** The clinician's: their own records and figures. */
export function ownReach(viewer: Viewer): OwnReach {
  const own = viewer.grants.find((grant) => grant.role === "clinician" && grant.clinicianKey);
  if (!own?.clinicianKey) {
    throw new Refused(
      "This page is a clinician's own; your sign-in is not joined to a clinician's code. Ask the administrator.",
    );
  }
  return new FiguresOfOne(viewer.name, own.clinicianKey);
}

export function recordsReach(viewer: Viewer): RecordsReach {
  return new Records(viewer.name, practicesAs(viewer, "record-keeper"), viewer.userId);
}

export function peopleReach(viewer: Viewer): PeopleReach {
  return new People(viewer.name, practicesAs(viewer, "administrator"));
}

/** Whoever is judged by a protocol, signs for it or keeps the practice reads it; its clinical lead alone changes it. */
export function protocolReach(viewer: Viewer): ProtocolReach {
  const changes = hasRole(viewer, "clinical-lead") ? practicesAs(viewer, "clinical-lead") : [];
  // A clinician may work at several practices, and no protocol is a secret.
  if (hasRole(viewer, "clinician")) return new Protocols(viewer.name, null, changes);
  const readers = (["clinical-lead", "quality-officer", "administrator"] as const).filter((role) =>
    hasRole(viewer, role),
  );
  if (readers.length === 0)
    throw new Refused(
      "The protocol is for clinicians, clinical leads, quality officers and administrators; none of these is one of your roles.",
    );
  const read = readers.map((role) => practicesAs(viewer, role));
  return new Protocols(
    viewer.name,
    read.includes(null) ? null : [...new Set(read.flatMap((practices) => practices ?? []))],
    changes,
  );
}

export function notesReach(viewer: Viewer): NotesReach {
  return new OwnNotes(viewer.userId, viewer.name);
}

/** Whoever runs the command on the home's own machine holds its files anyway: everything. */
export function holderReach(): {
  figures: FiguresReach;
  records: RecordsReach;
  people: PeopleReach;
} {
  const by = commandLine;
  return {
    figures: new FiguresOfAll(by, null, true),
    records: new Records(by, null, by),
    people: new People(by, null),
  };
}

/** The same reach, narrowed to one of its practices. */
export function narrowed(reach: FiguresReach, practice: string | undefined): FiguresReach {
  if (!practice) return reach;
  if (reach.practices !== null && !reach.practices.includes(practice)) {
    throw new Refused(`Practice ${practice} is not yours to see.`);
  }
  return new FiguresOfAll(reach.by, [practice], reach.byClinician);
}

/** Every practice: only for counts of people that decide what is masked, which are never shown. */
export function forMasks(reach: FiguresReach): FiguresReach {
  return new FiguresOfAll(reach.by, null, false);
}

/** Does the viewer hold the role anywhere. */
export function hasRole(viewer: Viewer, role: Role): boolean {
  return viewer.grants.some((grant) => grant.role === role);
}

function practicesAs(viewer: Viewer, role: Role): readonly string[] | null {
  const grants = viewer.grants.filter((grant) => grant.role === role);
  if (grants.length === 0)
    throw new Refused(
      `This page is for the ${role.replace("-", " ")}; that is not one of your roles.`,
    );
  if (grants.some((grant) => grant.practice === null)) return null;
  return grants.map((grant) => grant.practice).filter((code) => code !== null);
}
