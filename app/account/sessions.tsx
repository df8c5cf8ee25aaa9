import type { OwnAccount } from "@/lib/reports/account/own-account";
import { AnsweringForm } from "../_parts/answering-form";
import { Section } from "../_parts/section";
import { TableBox } from "../_parts/table-box";
import { endEverySessionAct, endSessionAct } from "./acts";

/** Where one is signed in, and how to end it. */
export function Sessions(props: { sessions: OwnAccount["sessions"] }) {
  return (
    <Section
      id="sessions"
      title="Where you are signed in"
      note="A session ends an hour after its last use, and twelve hours after its sign-in. Times are UTC."
    >
      <TableBox label="Where you are signed in">
        <table className="fold">
          <thead>
            <tr>
              <th scope="col">Signed in</th>
              <th scope="col">Last used</th>
              <th scope="col">Browser</th>
              <th scope="col">End</th>
            </tr>
          </thead>
          <tbody>
            {props.sessions.map((one) => (
              <tr key={one.id}>
                <th scope="row">{one.began}</th>
                <td data-label="Last used">{one.used}</td>
                <td data-label="Browser" className="small">
                  {one.browser || "not told"}
                </td>
                <td data-label="End">
                  {one.here ? (
                    "This one"
                  ) : (
                    <AnsweringForm
                      row
                      act={endSessionAct}
                      hidden={{ session: one.id }}
                      button="End it"
                      label={`Session of ${one.began}`}
                    />
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
      <AnsweringForm act={endEverySessionAct} button="Sign out everywhere" />
    </Section>
  );
}
