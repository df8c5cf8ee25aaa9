import { type CompositeView, noVerdict, type ScoreWords, scoreNames } from "@/lib/views/composite";
import { Definition } from "./definition";
import { TableBox } from "./table-box";

/** Both overall scores, each with interval and counts, and what they are not. `spelledOut` for what is printed. */
export function OverallScores(props: { of: CompositeView; first: string; spelledOut?: boolean }) {
  const { rows, about } = props.of;
  if (rows.length === 0)
    return <p className="missing">No visit of this period has anything that counts.</p>;
  const words = about.map((sentence) => <p key={sentence}>{sentence}</p>);
  return (
    <>
      <p className="note">{noVerdict}</p>
      <TableBox label="Overall scores">
        <table className="fold overall">
          <thead>
            <tr>
              <th scope="col">{props.first}</th>
              <th scope="col">{scoreNames.opportunities}</th>
              <th scope="col">{scoreNames.visits}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.id} className={row.whole ? "whole" : undefined}>
                <th scope="row">{row.name}</th>
                <td data-label={scoreNames.opportunities}>
                  <ScoreInWords of={row.opportunities} />
                </td>
                <td data-label={scoreNames.visits}>
                  <ScoreInWords of={row.visits} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
      {props.spelledOut ? (
        <div className="small soft stack-tight">{words}</div>
      ) : (
        <Definition of="the overall scores">{words}</Definition>
      )}
    </>
  );
}

function ScoreInWords(props: { of: ScoreWords }) {
  const { estimate, missing, interval, counts, notMet } = props.of;
  return (
    <>
      <span className={missing ? "missing" : undefined}>{estimate}</span>
      {interval ? <span className="soft">, 95 % interval {interval}</span> : null}
      <div className="small soft">
        {counts}; {notMet}
      </div>
    </>
  );
}
