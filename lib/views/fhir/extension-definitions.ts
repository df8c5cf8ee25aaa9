import type * as r4 from "fhir/r4";
import { extensionUrls } from "./extension-urls";
import { type ExtensionDefined, structureDefinition } from "./structure-definition";

const group = "MeasureReport.group";
const stratum = `${group}.stratifier.stratum`;

const defined: readonly ExtensionDefined[] = [
  {
    url: extensionUrls.interval,
    name: "ScoreInterval",
    title: "Interval of a score",
    description:
      "An interval of confidence around a score, in the score's own unit. The clustered reading allows for units of one patient (of an overall score, of one visit) resembling each other, and is the one to read where it is there; the plain one takes units as independent. Where there is none, data-absent-reason stands in place of its ends: not-applicable where units sit in no patient, unknown where there are too few.",
    on: [`${group}.measureScore`, `${stratum}.measureScore`],
    holds: [
      { name: "reading", type: "code", short: "plain or clustered", required: true },
      { name: "lower", type: "decimal", short: "Lower end, in the score's unit" },
      { name: "upper", type: "decimal", short: "Upper end, in the score's unit" },
      { name: "level", type: "decimal", short: "Level of confidence, as a share: 0.95" },
      { name: "method", type: "code", short: "Method by which it was made" },
      {
        name: "design-effect",
        type: "decimal",
        short: "How many times the variance is that of independent units",
      },
    ],
  },
  {
    url: extensionUrls.countedNotRecorded,
    name: "CountedNotRecorded",
    title: "Counted, not recorded",
    description:
      "Units of the denominator, neither excluded nor excepted, of which the records do not tell whether they are of the numerator. They are not in the numerator, and are never said to be not met: denominator less exclusions, exceptions, numerator and these are the units known not to be met.",
    on: [group, stratum],
    holds: "integer",
  },
  {
    url: extensionUrls.uncountedNotRecorded,
    name: "UncountedNotRecorded",
    title: "Not recorded, not counted",
    description:
      "Units of the initial population of which the records do not tell the value. They are in no other population.",
    on: [group, stratum],
    holds: "integer",
  },
  {
    url: extensionUrls.byReason,
    name: "PopulationByReason",
    title: "Units of a population by reason",
    description:
      "How many of a population's units are in it for one coded reason; a unit counts under the first that applies, so that the reasons add up to the population.",
    on: [`${group}.population`, `${stratum}.population`],
    holds: [
      { name: "reason", type: "string", short: "The reason, in words", required: true },
      { name: "count", type: "integer", short: "Units", required: true },
    ],
  },
];

/** What the extensions of our own mean. */
export const extensionDefinitions: readonly r4.StructureDefinition[] =
  defined.map(structureDefinition);
