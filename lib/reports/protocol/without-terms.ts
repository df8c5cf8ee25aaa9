import type { FiguresReach } from "@/lib/access/reach";
import type { Criterion } from "@/lib/protocol/criterion";
import { ownCodesIn } from "@/lib/protocol/own-codes";
import { ownTerms } from "@/lib/store/protocol/own-terms";
import { plainCode } from "@/lib/views/protocol/own-words";

/** Says which practice lacks an own term that the criterion bears; undefined where none does. */
export async function withoutTerms(
  reach: FiguresReach,
  criterion: Criterion,
  practices: readonly string[],
): Promise<string | undefined> {
  const needed = ownCodesIn(criterion);
  if (needed.length === 0) return undefined;
  const terms = await ownTerms(reach);
  const lacking = practices.flatMap((practice) => {
    const term = needed.find(
      ({ kind, code }) =>
        !terms.some((one) => one.practice === practice && one.kind === kind && one.code === code),
    );
    return term ? [{ practice, ...term }] : [];
  });
  const [first] = lacking;
  return (
    first &&
    `Practice ${first.practice} has no own ${first.kind} “${plainCode(first.code)}”: add it there first, or choose fewer practices.`
  );
}
