import type { UnitKind } from "@/lib/protocol/criterion";
import type { List } from "@/lib/protocol/field";
import type { OwnWords } from "./own-words";

/** What a condition is about: a unit, or an item of a list of it. */
export type About = { readonly unit: UnitKind; readonly own: OwnWords; readonly list?: List };
