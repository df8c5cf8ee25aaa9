import { holderReach, narrowed } from "@/lib/access/reach";
import { composites } from "@/lib/reports/composite";
import { figures } from "@/lib/reports/figures";
import { byCommand } from "@/lib/reports/log/by-command";
import { practiceKnown } from "@/lib/reports/practices";
import { withReferences } from "@/lib/reports/reference";
import { compositeLines } from "@/lib/views/composite";
import { figureLine } from "@/lib/views/figure-line";
import { periodNamed } from "./period-named";
import { readOptions } from "./read-options";
import { CannotDo, type Done } from "./verb";

/** A figure with its criterion by title: what it states is at the criterion's own place. */
function named<Judged extends { readonly criterion?: { readonly title: string } }>({
  criterion,
  ...figure
}: Judged) {
  return criterion ? { ...figure, title: criterion.title } : figure;
}

/** `figures --period 2026-Q3 [--practice P1] [--clinician C01]` */
export async function showFigures(args: string[]): Promise<Done> {
  const { values } = readOptions(args, ["period", "practice", "clinician"]);
  const period = periodNamed(values.period);
  const reach = narrowed(holderReach().figures, values.practice);
  return byCommand(
    "canal-audit figures",
    { period: period.name, practice: values.practice, whose: values.clinician },
    async () => {
      if (values.practice && !(await practiceKnown(holderReach().records, values.practice)))
        throw new CannotDo(`No practice has the code ${values.practice}.`);
      const by = values.clinician
        ? (["clinician"] as const)
        : (["group", "practice", "clinician"] as const);
      const [found, overall] = await Promise.all([
        figures(reach, {
          periods: [period],
          by: values.clinician ? by : [...by, "chair"],
        }),
        composites(reach, { periods: [period], by }),
      ]);
      const isWanted = ({ about }: { readonly about: object }) =>
        !values.clinician ||
        ("code" in about && String(about.code).split(", ").includes(values.clinician));
      const wanted = found.filter(isWanted);
      if (values.clinician && wanted.length === 0)
        throw new CannotDo(
          `No records of clinician ${values.clinician}${values.practice ? ` at ${values.practice}` : ""} in ${period.name}.`,
        );
      const scores = overall.filter(isWanted);
      const compared = await withReferences(reach, wanted);
      return {
        text:
          [...compared.map(figureLine), ...scores.flatMap(compositeLines)].join("\n") ||
          `No records in ${period.name}.`,
        json: { period: period.name, figures: compared.map(named), composites: scores },
      };
    },
  );
}
