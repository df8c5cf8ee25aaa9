import type { Canal, Delivery, Visit } from "./invented-visits";

/** Words of the invented French system, by what they mean. */
const treatments = {
  primary: "Traitement initial",
  retreatment: "Retraitement",
  emergency: "Urgence",
};
const outcomes = { completed: "Terminé", continuing: "À suivre", abandoned: "Abandonné" };
const difficulties = { low: "facile", moderate: "moyenne", high: "difficile" };
const methods = { locator: "localisateur", radiograph: "radio", both: "les deux" };
const techniques = {
  rotary: "rotation continue",
  reciprocating: "réciprocité",
  hand: "manuelle",
};
const resets = { yes: "oui", no: "non", "no-timer": "sans minuteur" };
const dams = { done: "oui", "not-done": "non", "not-applicable": "s/o", excepted: "impossible" };
const canals: Readonly<Record<string, string>> = {
  ...{ MB1: "MV1", MB2: "MV2", DB: "DV", B: "V", P: "P", main: "unique" },
};
const products = {
  naocl: "hypochlorite de sodium",
  edta: "EDTA",
  saline: "sérum physiologique",
  other: "eau oxygénée",
};
const ways = { continuous: "continu", syringe: "seringue", "negative-pressure": "dépression" };

const header =
  "Séance|Cabinet|Fauteuil|Praticien|Dossier|Dent|Début|Fin|Acte|Issue|Difficulté|Canal|Longueur (cm)|Méthode|Technique|Temps de préparation (min)|Minuteur remis|Obturé|Limes|Fracturées|Digue";

/** The charts: bars between cells, three lines above the header, a row a canal with the visit on each. */
export function chartText(visits: readonly Visit[]): string {
  const rows = visits.flatMap((visit) => visit.canals.map((canal) => chartRow(visit, canal)));
  const title = ["Export des séances | cabinets A et B", "Période : 19/10/2026 au 30/10/2026", ""];
  return `${[...title, header, ...rows].join("\r\n")}\r\n`;
}

function chartRow(visit: Visit, canal: Canal): string {
  return [
    ...[visit.id, visit.site, visit.chair, visit.clinician, visit.patient],
    ...[`${visit.quadrant}${visit.position}`, moment(visit.start), moment(visit.end)],
    ...[treatments[visit.treatment], outcomes[visit.outcome]],
    visit.difficulty ? difficulties[visit.difficulty] : "",
    canals[canal.name],
    canal.lengthMm === undefined ? "" : comma(canal.lengthMm / 10),
    canal.method ? methods[canal.method] : "",
    techniques[canal.technique],
    canal.preparationS === undefined ? "" : comma(canal.preparationS / 60),
    canal.reset ? resets[canal.reset] : "",
    canal.filled ? "oui" : "non",
    ...[canal.files, canal.separated],
    visit.dam ? dams[visit.dam] : "",
  ].join("|");
}

/** The pumps' log: an object a line, without what was not measured, and with a rinse of the line each morning. */
export function pumpText(deliveries: readonly Delivery[]): string {
  const lines = deliveries.map((one) =>
    JSON.stringify({
      ...{ site: one.site, fauteuil: one.chair, heure: moment(one.at), programme: "soin" },
      ...(one.toothWritten && one.visit
        ? { dent: `${one.visit.quadrant}${one.visit.position}` }
        : {}),
      ...{ canal: canals[one.canal], produit: products[one.irrigant] },
      ...(one.strengthPct === undefined ? {} : { titre_pct: one.strengthPct }),
      ...(one.volumeMl === undefined ? {} : { volume_cm3: one.volumeMl }),
      ...(one.flowMlMin === undefined
        ? {}
        : { debit_ml_s: Number((one.flowMlMin / 60).toFixed(6)) }),
      duree: duration(one.durationS),
      ...(one.dwellS === undefined ? {} : { pose_min: one.dwellS / 60 }),
      mode: ways[one.delivery],
      appareil: { serie: 7 },
    }),
  );
  return `${[...rinses(), ...lines].join("\n")}\n`;
}

/** A rinse before the first visit of each chair on two of the days. */
function rinses(): string[] {
  return [19, 26].flatMap((day) =>
    ["A", "B"].map((site) =>
      JSON.stringify({
        ...{ site, fauteuil: "F1", heure: moment(Date.UTC(2026, 9, day, 5, 40)) },
        ...{ programme: "rinçage", duree: "PT2M" },
      }),
    ),
  );
}

/** With the offset of Paris, which went back an hour in the night to 25 October 2026. */
function moment(at: number): string {
  const hours = at < Date.UTC(2026, 9, 25, 1) ? 2 : 1;
  return `${new Date(at + hours * 3_600_000).toISOString().slice(0, 19)}+0${hours}:00`;
}

function duration(seconds: number): string {
  const minutes = Math.floor(seconds / 60);
  const rest = comma(seconds - 60 * minutes);
  return `PT${minutes > 0 ? `${minutes}M` : ""}${rest}S`;
}

const comma = (value: number) => String(value).replace(".", ",");
