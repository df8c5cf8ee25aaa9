import type { Criterion } from "../criterion";
import { commonPractice, isPowered, ofCanals, ofVisits, openApex, primaryTooth } from "./common";

/** Isolation, working length and the way down the canal. */
export const beforeIrrigation: readonly Criterion[] = [
  {
    ...ofVisits,
    id: "isolation",
    title: "Isolation by rubber dam",
    statement: "The tooth was isolated by rubber dam.",
    rationale:
      "The dam keeps saliva out of the canal, and irrigant and instruments out of the patient.",
    exclusions: [
      {
        reason: "abandoned",
        inWords: "visits that were abandoned",
        when: { field: "outcome", is: "abandoned" },
      },
      {
        reason: "not-applicable",
        inWords: "visits where the dam was not applicable",
        when: { field: "step/dam", is: "not-applicable" },
      },
    ],
    met: { field: "step/dam", is: "done" },
    exceptions: { steps: ["dam"], reasons: ["not-possible"] },
    target: 1,
    targetSource: commonPractice,
  },
  {
    ...ofCanals,
    id: "length-recorded",
    title: "Working length recorded",
    statement: "The canal's working length and how it was found are written down.",
    rationale: "Without a length nobody can say how far the canal was prepared.",
    met: { all: [{ recorded: "working_length_mm" }, { recorded: "length_method" }] },
    exceptions: null,
    target: 0.95,
    completenessFloor: null,
  },
  {
    ...ofCanals,
    id: "length-confirmed",
    title: "Working length confirmed",
    statement: "The working length was found by apex locator, by radiograph or by both.",
    rationale:
      "A length that is only estimated may end in bone or leave part of the canal untouched.",
    population: isPowered,
    exclusions: [primaryTooth, openApex],
    // Where the canal says how, that stands; where it says nothing, the steps may.
    met: {
      any: [
        { field: "length_method", among: ["locator", "radiograph", "both"] },
        {
          all: [
            { not: { recorded: "length_method" } },
            {
              any: [
                { field: "step/apex-locator", is: "done" },
                { field: "step/length-radiograph", is: "done" },
              ],
            },
          ],
        },
      ],
    },
    exceptions: { steps: ["apex-locator"], reasons: ["locator-unusable"] },
    target: 0.9,
  },
  {
    ...ofCanals,
    id: "patency",
    title: "Patency or glide path",
    statement: "Patency was confirmed or a glide path made before the canal was prepared.",
    rationale: "A file that is driven where no path was made binds, and may separate.",
    population: isPowered,
    exclusions: [
      {
        reason: "filling-not-removed",
        inWords: "canals whose old filling was not removed",
        when: { known: { field: "step/filling-removed", is: "not-done" } },
      },
    ],
    met: {
      any: [
        { field: "step/patency", is: "done" },
        { field: "step/glide-path", is: "done" },
      ],
    },
    exceptions: { steps: ["patency", "glide-path"], reasons: ["calcified"] },
    target: 0.9,
  },
];
