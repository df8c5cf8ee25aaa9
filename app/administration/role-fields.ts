import { roles } from "@/lib/access/role";
import type { PeopleView } from "@/lib/reports/people";
import { roleWords } from "../_parts/role-words";

/** The fields by which a role is given: which, where, and for a clinician whose figures. */
export function roleFields(view: PeopleView) {
  const group = view.ofGroup ? [{ value: "", words: "The whole group" }] : [];
  const practices = view.practices.map(({ code, name }) => ({
    value: code,
    words: name === code ? code : `${name} (${code})`,
  }));
  const clinicians = view.clinicians.map(({ key, codes }) => ({
    value: key,
    words: codes.join(", "),
  }));
  return [
    {
      label: "Role",
      name: "role",
      options: roles.map((role) => ({ value: role, words: roleWords[role] })),
    },
    { label: "Where", name: "practice", options: [...group, ...practices] },
    {
      label: "Clinician's code",
      name: "clinicianKey",
      hint: "For the role of clinician: whose figures are theirs.",
      options: [{ value: "", words: "None" }, ...clinicians],
    },
  ];
}
