import { type ExceptionShare, fewestExceptions } from "@/lib/audit/exception-shares";
import { intervalMethod } from "./interval-method";
import { count, percent } from "./quantity";
import { toldApart } from "./told-apart";

/** How often a clinician's units of a criterion are excepted, in words. */
export type ExceptionRateRow = {
  readonly id: string;
  readonly clinician: string;
  readonly practice: string;
  readonly criterion: string;
  readonly excepted: string;
  readonly eligible: string;
  readonly share: string;
  readonly interval: string;
  /** "2.2 % of 410", the practice without the clinician. */
  readonly others: string;
  /** Above, not above, or why nothing is said. */
  readonly comparison: string;
  readonly above: boolean;
};

export type ExceptionRates = {
  readonly rows: readonly ExceptionRateRow[];
  /** One sentence for each share that lies above; what it comes to where none does. */
  readonly findings: readonly {
    readonly id: string;
    readonly words: string;
    readonly look: boolean;
  }[];
  /** What the comparison is and how often chance alone does it. */
  readonly note: string;
};

/** The shares of a practice's clinicians, with the practice and the title of each criterion. */
export type PracticeShares = {
  readonly practice: string;
  readonly shares: readonly ExceptionShare[];
};

/** @param titleOf the title of a criterion's measure */
export function exceptionRates(
  of: readonly PracticeShares[],
  titleOf: (measure: string) => string,
): ExceptionRates {
  const rows = of.flatMap(({ practice, shares }) => {
    const name = toldApart(
      shares.map(({ figure }) => figure),
      ({ about }) => (about.kind === "clinician" ? about.code : ""),
    );
    return shares.flatMap((share) =>
      share.excepted === 0 ? [] : [rowOf(practice, share, name(share.figure), titleOf)],
    );
  });
  const compared = of.flatMap(({ shares }) => shares).filter(({ above }) => above !== null).length;
  return { rows, findings: findingsOf(rows, compared), note: noteOf(compared) };
}

function rowOf(
  practice: string,
  share: ExceptionShare,
  clinician: string,
  titleOf: (measure: string) => string,
): ExceptionRateRow {
  const { figure, interval, others } = share;
  return {
    id: [practice, figure.measure, figure.about.kind === "clinician" ? figure.about.key : ""].join(
      "/",
    ),
    clinician,
    practice,
    criterion: titleOf(figure.measure),
    excepted: count(share.excepted),
    eligible: count(share.eligible),
    share: percent(share.share ?? 0),
    interval: interval ? `${percent(interval.lower)} to ${percent(interval.upper)}` : "none",
    others:
      others.share === null
        ? "nobody else"
        : `${percent(others.share)} of ${count(others.eligible)}`,
    comparison:
      share.above === null
        ? others.share === null
          ? "nobody to compare with"
          : `under ${fewestExceptions} exceptions, not compared`
        : share.above
          ? "above the practice without them: look at the reasons"
          : "not above the practice without them",
    above: share.above === true,
  };
}

function findingsOf(
  rows: readonly ExceptionRateRow[],
  compared: number,
): ExceptionRates["findings"] {
  const above = rows.filter((row) => row.above);
  if (above.length === 0) {
    const words =
      rows.length === 0
        ? "No unit that counts by clinician is excepted in this period."
        : compared === 0
          ? `No clinician has ${fewestExceptions} exceptions or more of one criterion and others to compare with.`
          : "No clinician's share of exceptions lies above the practice's without them.";
    return [{ id: "none", words, look: false }];
  }
  return above.map((row) => ({
    id: row.id,
    words: `${row.clinician} of ${row.practice}, ${row.criterion}: ${row.excepted} of ${row.eligible} eligible units are excepted, ${row.share} (95 % interval ${row.interval}); in the practice without them ${row.others}. Look at the reasons.`,
    look: true,
  }));
}

function noteOf(compared: number): string {
  const by = `Excepted units of those eligible, the excepted among them; intervals ${intervalMethod("clopper-pearson")}. A share is above where its whole 95 % interval lies above the share of the practice's units without the clinician's. That is a prompt to look at the reasons, not a verdict on anyone: some patients bring reasons that others do not.`;
  return compared === 0
    ? by
    : `${by} ${count(compared)} ${compared === 1 ? "share is" : "shares are"} compared; chance alone puts up to one in 40 above, and more where one visit brings several exceptions.`;
}
