import { AnsweringForm } from "@/app/_parts/answering-form";
import { Asked } from "@/app/exceptions/_page/asked";
import { WrittenForm } from "@/app/exceptions/_page/written-form";
import { answerAct, askAct, closeAct, withdrawExceptionAct } from "@/app/exceptions/acts";
import type { ExceptionThere } from "@/lib/reports/exception-unit";

/** One exception that stands or was withdrawn, what was asked about it, and what can be done by whoever looks at it. */
export function There(props: {
  of: ExceptionThere;
  at: { readonly practice: string; readonly session: string; readonly criterion: string };
}) {
  const { of } = props;
  const hidden = { ...props.at, canal: of.canal };
  return (
    <div className="stack-tight">
      <h3>{of.unit}</h3>
      <p>
        <span className="mark mark-excepted">{of.reason}</span>{" "}
        <span className="small soft">
          {of.clinician}; {of.source}. {of.remark}
        </span>
        {of.withdrawn ? (
          <>
            {" "}
            <span className="tag">withdrawn</span>{" "}
            <span className="small soft">by {of.withdrawn}: it counts no longer.</span>
          </>
        ) : null}
      </p>
      {of.note ? <p>Note: {of.note}</p> : null}
      {of.mayWithdraw || of.withdrawn ? (
        <AnsweringForm
          act={withdrawExceptionAct}
          button="Withdraw"
          over={!of.mayWithdraw}
          kind="plain"
          row
          label={`Withdraw the exception of ${of.unit}`}
          hidden={hidden}
        />
      ) : null}
      {of.queries.map((query) => (
        <Asked key={query.id} of={query} />
      ))}
      {of.mayAnswer ? (
        <WrittenForm
          act={answerAct}
          button="Answer"
          label={`Answer about ${of.unit}`}
          hidden={hidden}
          text={{
            label: "Your answer",
            name: "answer",
            hint: "The lead sees it. It is never exported; name nobody. 500 characters.",
            required: true,
          }}
        />
      ) : null}
      {of.mayClose ? (
        <AnsweringForm
          act={closeAct}
          button="Close the question"
          row
          label={`Close the question about ${of.unit}`}
          hidden={hidden}
        />
      ) : null}
      {of.mayAsk ? (
        <details className="not-printed">
          <summary>Ask about this exception</summary>
          <WrittenForm
            act={askAct}
            button="Ask"
            label={`Ask about ${of.unit}`}
            hidden={hidden}
            text={{
              label: "Your question",
              name: "question",
              hint: "Whoever did the work sees it. It is never exported; name nobody. 500 characters.",
              required: true,
            }}
          />
        </details>
      ) : null}
    </div>
  );
}
