import { notesReach, type PeopleReach, peopleReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { NoSuchPerson } from "@/lib/store/people/change-within";
import { peopleWithin } from "@/lib/store/people/list-people";
import { ownData, type PersonData, personDataWithin } from "@/lib/store/people/person-data";

/** What is kept about a person, as one JSON file. */
export type DataFile = { readonly name: string; readonly text: string };

/** What the viewer asks about themselves, with their own private texts. */
export async function ownDataFile(viewer: Viewer): Promise<DataFile> {
  return fileOf(await ownData(notesReach(viewer)));
}

/** What an administrator hands out; null where there is no such person among theirs. @throws Refused */
export async function personDataFile(viewer: Viewer, userId: string): Promise<DataFile | null> {
  const data = await dataOrNone(peopleReach(viewer), userId);
  return data && fileOf(data);
}

/** By email, for the command; null where nobody has it. */
export async function dataByEmail(reach: PeopleReach, email: string): Promise<PersonData | null> {
  const id = await idOf(reach, email);
  return id === undefined ? null : dataOrNone(reach, id);
}

/** The account of an email within the reach. */
export async function idOf(reach: PeopleReach, email: string): Promise<string | undefined> {
  const asked = email.trim().toLowerCase();
  return (await peopleWithin(reach)).find((person) => person.email === asked)?.id;
}

async function dataOrNone(reach: PeopleReach, userId: string): Promise<PersonData | null> {
  try {
    return await personDataWithin(reach, userId);
  } catch (error) {
    if (error instanceof NoSuchPerson) return null;
    throw error;
  }
}

function fileOf(data: PersonData): DataFile {
  return { name: "kept-about-a-person.json", text: `${JSON.stringify(data, null, 2)}\n` };
}
