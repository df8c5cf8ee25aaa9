import { count } from "../quantity";
import type { ActionLine } from "./action-lines";
import type { SharedLine } from "./shared-view";

/** Something that an audit asks of somebody; without an address it is only told. */
export type Reminder = { readonly words: string; readonly href: string | null };

/** What is asked first, then one's own actions, then what others are late with. */
export function reminders(of: {
  readonly own: readonly ActionLine[];
  readonly asked: readonly SharedLine[];
  readonly late: readonly ActionLine[];
}): Reminder[] {
  return [
    ...of.asked.map((one) => ({
      words: `${one.name}: ${one.state}`,
      href: `/clinician/audits/${one.id}`,
    })),
    ...of.own.map((one) => ({
      words: `Yours to see to by ${one.due}${one.late ? ", which is over" : ""}: ${one.what}`,
      href: null,
    })),
    ...(of.late.length > 0
      ? [
          {
            words: `${count(of.late.length)} ${of.late.length === 1 ? "action of an audit is" : "actions of audits are"} past the day agreed.`,
            href: "/audits#actions",
          },
        ]
      : []),
  ];
}
