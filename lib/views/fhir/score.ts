import type * as r4 from "fhir/r4";
import type { Figure, FigureInterval } from "@/lib/audit/figure";
import { sitsInNoPatient } from "@/lib/audit/sits-in-no-patient";
import { type AbsentReason, absent } from "./absent";
import { extensionUrls } from "./extension-urls";

type Scored = Pick<Figure, "estimate" | "interval" | "masked" | "population" | "notRecorded">;

/** A share as a score: a number of UCUM's unity. */
export const unity = { unit: "1", system: "http://unitsofmeasure.org", code: "1" } as const;

/** A figure's estimate with both intervals; without an estimate no value, and why there is none. */
export function scoreOf(figure: Figure): r4.Quantity {
  if (figure.masked || figure.estimate === null) return { extension: [absent(whyNone(figure))] };
  const { interval, clustered } = figure;
  return {
    extension: [
      intervalExtension("plain", interval ?? "unknown"),
      intervalExtension(
        "clustered",
        clustered ?? (sitsInNoPatient(figure) ? "not-applicable" : "unknown"),
      ),
    ],
    value: figure.estimate,
    ...(figure.kind === "rate"
      ? unity
      : { unit: figure.unit, system: unity.system, code: figure.unit }),
  };
}

/** An interval, or why there is none. */
export function intervalExtension(
  reading: "plain" | "clustered",
  interval: (FigureInterval & { readonly designEffect?: number | null }) | AbsentReason,
): r4.Extension {
  if (typeof interval === "string")
    return {
      url: extensionUrls.interval,
      extension: [{ url: "reading", valueCode: reading }, absent(interval)],
    };
  const { lower, upper, level, method, designEffect } = interval;
  return {
    url: extensionUrls.interval,
    extension: [
      { url: "reading", valueCode: reading },
      { url: "lower", valueDecimal: lower },
      { url: "upper", valueDecimal: upper },
      { url: "level", valueDecimal: level },
      { url: "method", valueCode: method },
      ...(typeof designEffect === "number"
        ? [{ url: "design-effect", valueDecimal: designEffect }]
        : []),
    ],
  };
}

function whyNone({ masked, population, notRecorded }: Scored): AbsentReason {
  if (masked) return "masked";
  return population > 0 && notRecorded > 0 ? "unknown" : "not-applicable";
}
