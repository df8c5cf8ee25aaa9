import type * as r4 from "fhir/r4";
import { canonicalJson } from "../canonical-json";
import { cautions } from "../cautions";
import { canonicalOf } from "./addresses";
import { nameUuid } from "./name-uuid";

type Named = "resourceType" | "url" | "version" | "name" | "status" | "experimental" | "disclaimer";

/**
 * A measure under its address. Its version follows from its content, so that a changed definition is another version
 * and an unchanged one the same in every bundle. What a report speaks of was in force in its period: active, neither a
 * draft nor an experiment.
 *
 * @param id kebab-case
 */
export function identified(id: string, content: Omit<r4.Measure, Named>): r4.Measure {
  return {
    resourceType: "Measure",
    url: canonicalOf("Measure", id),
    version: nameUuid(canonicalJson(content)).slice(0, 8),
    name: pascal(id),
    status: "active",
    experimental: false,
    ...content,
    disclaimer: cautions.join(" "),
  };
}

/** The address of exactly this version. */
export function canonicalOfMeasure({ url, version }: r4.Measure): string {
  return `${url}|${version}`;
}

/** A name that a program may bear (R4, invariant mea-0): a capital first, letters and digits. */
function pascal(id: string): string {
  return id
    .split(/[^A-Za-z0-9]+/)
    .map((word) => `${word.charAt(0).toUpperCase()}${word.slice(1)}`)
    .join("");
}
