import type * as r4 from "fhir/r4";
import { canonicalJson } from "../canonical-json";
import { nameUuid } from "./name-uuid";

/** A resource in a bundle, under an address that follows from its content. */
export type Entry<R extends r4.FhirResource = r4.FhirResource> = {
  readonly fullUrl: string;
  readonly resource: R;
};

export function entryOf<R extends r4.FhirResource>(resource: R): Entry<R> {
  return { fullUrl: `urn:uuid:${nameUuid(canonicalJson(resource))}`, resource };
}
