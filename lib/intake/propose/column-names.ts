/**
 * Words in the names of columns that tell which field they feed, in English, German, French and Spanish (common words of
 * the trade). Names are compared in lower case, without accents. The first fitting field of a table takes the column.
 */
export const columnNames: Readonly<Record<string, RegExp>> = {
  session_id:
    /^(visit|session|appointment|vorgang|sitzung|termin|seance|visite|sesion|visita|cita)\b/,
  practice: /^(site|practice|location|praxis|standort|cabinet|centre|clinica)\b/,
  chair:
    /\b(chair|room|surgery|unit|stuhl|raum|zimmer|platz|fauteuil|salle|poste|sillon|gabinete)\b/,
  clinician:
    /\b(operator|clinician|dentist|doctor|provider|behandler|arzt|zahnarzt|praticien|operateur|dentista|operador)\b/,
  patient: /\b(patient|patienten|patientin|paciente|chart|akte|dossier|historia)/,
  tooth: /\b(tooth|zahn|dent|diente|pieza)\b/,
  ended_at: /\b(end|ended|finish|finished|ende|fin)\b/,
  started_at:
    /\b(start|started|begin|beginn|date|datum|day|tag|time|uhrzeit|zeit|debut|heure|inicio|fecha|hora)\b/,
  treatment: /\b(type|treatment|procedure|behandlung|art|acte|traitement|tratamiento)\b/,
  outcome: /\b(status|outcome|result|ergebnis|etat|issue|estado|resultado)\b/,
  difficulty: /\b(grade|difficulty|schwierigkeit|difficulte|dificultad)\b/,
  canal: /\b(canal|kanal|conducto)\b/,
  length_method: /\b(by|method|methode|metodo|bestimmt)\b/,
  working_length_mm: /\b(wl|working length|arbeitslange|al|longueur|lt|longitud)\b/,
  preparation: /\b(technique|preparation|aufbereitung|technik|tecnica|instrumentation)\b/,
  timer_reset: /\b(reset|ruckgesetzt|remis|reinicio)\b/,
  filled: /\b(filled|obturated|gefullt|obture|obturado)\b/,
  irrigant: /\b(irrigant|solution|losung|spullosung|agent|produit|solucion|irrigante)/,
  concentration_pct: /\b(concentration|strength|konzentration|concentracion)\b/,
  seq: /\b(seq|sequence|no|nr|number|nummer|numero|ordre|orden)\b/,
  volume_ml: /\b(volume|amount|menge|quantite|volumen|cantidad|ml)\b/,
  flow_ml_min: /\b(flow|rate|fluss|debit|caudal)\b/,
  duration_s: /\b(duration|dauer|duree|duracion)\b/,
  dwell_s: /\b(dwell|einwirkzeit|contact|reposo)\b/,
  delivery: /\b(delivery|mode|abgabe|administration|voie|entrega)\b/,
  uses: /\b(files used|uses|feilen|limes|limas)\b/,
  separated: /\b(separated|separation|broken|fractured|frakturiert|fracture|fracturado)\b/,
  dam: /\b(dam|kofferdam|digue|dique)\b/,
};

/** A column's name as it is compared: lower case, no accents, everything but letters and digits a blank. */
export function comparable(name: string): string {
  return name
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .replace(/ß/g, "ss")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, " ")
    .trim();
}
