import type { Measure } from "./measure";

const treatmentPopulation =
  "Canals of visits that were completed or are continuing, in first treatment or retreatment, that were prepared. Each canal counts once a visit.";
const everyVisit = "Every visit, whatever its treatment or outcome.";
const ownDefinition = "The project's own definition; common practice.";

/** Every measure of the families irrigation time, volume and instrument separation, in page order. */
export const measures: readonly Measure[] = [
  {
    id: "irrigation-time",
    family: 1,
    title: "Irrigation time per canal",
    kind: "median",
    unit: "s",
    per: "canal",
    definition:
      "Time irrigant flowed, summed over the canal's deliveries. For continuous delivery it is the time the pump was on, whether or not the file was in the canal; it is neither preparation time nor contact time. A missing time is volume divided by flow where both are there. A time read off a timer that was not reset is not recorded.",
    population: treatmentPopulation,
    why: "How long each canal was irrigated.",
    source: ownDefinition,
  },
  {
    id: "hypochlorite-time",
    family: 1,
    title: "Hypochlorite time per canal",
    kind: "median",
    unit: "s",
    per: "canal",
    definition:
      "As irrigation time, hypochlorite deliveries only; 0 where none is hypochlorite. Recorded exactly where irrigation time is.",
    population: treatmentPopulation,
    why: "How long the irrigant that dissolves tissue flowed.",
    source: ownDefinition,
  },
  {
    id: "dwell-time",
    family: 1,
    title: "Dwell time per canal",
    kind: "median",
    unit: "s",
    per: "canal",
    definition:
      "Time irrigant was left in place, summed over the canal's deliveries. A canal with a delivery whose dwell is unknown is not recorded.",
    population: treatmentPopulation,
    why: "Flowing and standing are different things and are kept apart.",
    source: ownDefinition,
  },
  {
    id: "activation-time",
    family: 1,
    title: "Activation time per canal",
    kind: "median",
    unit: "s",
    per: "canal",
    definition:
      "Time the irrigant was activated, summed over the canal's deliveries; a delivery without activation counts 0. A canal with a delivery whose activation is unknown is not recorded.",
    population: treatmentPopulation,
    why: "Activation is recorded apart from flow.",
    source: ownDefinition,
  },
  {
    id: "volume",
    family: 2,
    title: "Irrigant volume per canal",
    kind: "median",
    unit: "mL",
    per: "canal",
    definition:
      "Volume delivered, summed over the canal's deliveries; not what the canal holds. A missing volume is flow times time where both are there.",
    population: treatmentPopulation,
    why: "With how much each canal was irrigated.",
    source: ownDefinition,
  },
  {
    id: "hypochlorite-volume",
    family: 2,
    title: "Hypochlorite volume per canal",
    kind: "median",
    unit: "mL",
    per: "canal",
    definition:
      "As irrigant volume, hypochlorite deliveries only; 0 where none is hypochlorite. Recorded exactly where irrigant volume is.",
    population: treatmentPopulation,
    why: "With how much hypochlorite each canal was irrigated.",
    source: ownDefinition,
  },
  {
    id: "volume-per-visit",
    family: 2,
    title: "Irrigant volume per visit",
    kind: "median",
    unit: "mL",
    per: "visit",
    definition:
      "Volume delivered at the visit, in its canals and as written down for the whole tooth. A visit with an unknown or held delivery, or with none, is not recorded.",
    population:
      "Visits that were completed or are continuing, in first treatment or retreatment, with a prepared canal.",
    why: "Deliveries written down for the whole tooth count here and nowhere else.",
    source: ownDefinition,
  },
  {
    id: "separation-per-use",
    family: 3,
    title: "Instrument separation per use",
    kind: "rate",
    unit: "use",
    per: "use",
    definition: "Uses in which the instrument separated, of the uses for which it is known.",
    population: everyVisit,
    why: "How often an instrument separated.",
    source: ownDefinition,
    lowerIsBetter: true,
  },
  {
    id: "separation-per-canal",
    family: 3,
    title: "Instrument separation per canal",
    kind: "rate",
    unit: "canal",
    per: "canal",
    definition:
      "Canals in which an instrument separated, of the canals with an instrument row. A canal counts as free of separation when all its uses are known and none is held. Fragments found on arrival are nobody's.",
    population: everyVisit,
    why: "How often a canal was affected.",
    source: ownDefinition,
    lowerIsBetter: true,
  },
  {
    id: "separation-per-visit",
    family: 3,
    title: "Instrument separation per visit",
    kind: "rate",
    unit: "visit",
    per: "visit",
    definition:
      "Visits in which an instrument separated, of the visits with an instrument row, counted as for canals.",
    population: everyVisit,
    why: "How often a patient was affected.",
    source: ownDefinition,
    lowerIsBetter: true,
  },
  {
    id: "separation-per-instrument",
    family: 3,
    title: "Instrument separation per instrument",
    kind: "rate",
    unit: "instrument",
    per: "instrument",
    definition:
      "Physical instruments that separated, of the instruments that carry an id and whose uses are all known.",
    population: "Instruments with an id, every visit.",
    why: "How often an instrument failed in its life here.",
    source: ownDefinition,
    lowerIsBetter: true,
  },
];

/** The measure of that id. */
export function measureOf(id: string): Measure {
  const found = measures.find((measure) => measure.id === id);
  if (!found) throw new RangeError(`no such measure: ${id}`);
  return found;
}
