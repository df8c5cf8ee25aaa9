/**
 * Words in the names of columns that tell which field they feed, in English, German, French and Spanish (common words of
 * the trade). Names are compared in lower case, without accents. The first fitting field of a table takes the column.
 */
export const columnNames: Readonly<Record<string, RegExp>> = {
  session_id:
    /^(visit|session|appointment|vorgang|sitzung|termin|seance|visite|sesion|visita|cita)\b/,
  practice: /^(site|practice|location|praxis|standort|cabinet|centre|centro|clinica|clinique)\b/,
  chair:
    /\b(chair|room|surgery|unit|stuhl|raum|zimmer|platz|fauteuil|salle|poste|sillon|gabinete)\b/,
  clinician:
    /\b(operator|clinician|dentist|doctor|provider|behandler|arzt|zahnarzt|praticien|operateur|dentista|operador)\b/,
  patient: /\b(patient|patienten|patientin|paciente|chart|akte|dossier|historia|expediente)/,
  tooth: /\b(tooth|zahn|dent|diente|pieza)\b/,
  ended_at: /\b(end|ended|finish|finished|ende|fin)\b/,
  started_at:
    /\b(start|started|begin|began|beginn|date|datum|day|tag|time|when|at|uhrzeit|zeit|debut|heure|inicio|fecha|hora)\b/,
  treatment: /\b(type|treatment|procedure|behandlung|art|acte|traitement|tratamiento)\b/,
  outcome: /\b(status|outcome|result|ergebnis|etat|issue|estado|resultado)\b/,
  difficulty: /\b(grade|difficulty|schwierigkeit|difficulte|dificultad)\b/,
  canal: /\b(canal|kanal|conducto)\b/,
  length_method: /\b(by|method|methode|metodo|bestimmt)\b/,
  working_length_mm: /\b(wl|working length|arbeitslange|al|longueur|lt|longitud)\b/,
  curvature_deg: /\b(curvature|krummung|courbure|curvatura)\b/,
  apical_size: /\b(apical size|apikale grosse|diametre apical|calibre apical)\b/,
  preparation_s:
    /\b(preparation time|prep time|aufbereitungszeit|temps de (preparation|mise en forme)|tiempo de preparacion)\b/,
  preparation: /\b(technique|preparation|aufbereitung|technik|tecnica|instrumentation)\b/,
  timer_reset: /\b(reset|ruckgesetzt|zuruckgesetzt|remis|reinicio|reiniciado)\b/,
  filled: /\b(filled|obturated|gefullt|obture|obturado)\b/,
  irrigant:
    /\b(irrigant|solution|agent|losung|spullosung|spulmittel|produit|solucion|irrigante|producto)\b/,
  concentration_pct: /\b(concentration|strength|konzentration|titre|concentracion)\b/,
  seq: /\b(seq|sequence|no|nr|number|nummer|numero|ordre|orden)\b/,
  activation_s: /\b(activation time|aktivierungszeit|temps d activation|tiempo de activacion)\b/,
  activation: /\b(activation|aktivierung|activacion)\b/,
  dwell_s: /\b(dwell|soak|einwirkzeit|contact|pose|reposo|contacto)\b/,
  volume_ml: /\b(volume|amount|menge|quantite|volumen|cantidad|ml|cm3|cc)\b/,
  flow_ml_min: /\b(flow|rate|fluss|debit|caudal)\b/,
  duration_s: /\b(duration|seconds|dauer|duree|duracion)\b/,
  delivery: /\b(delivery|mode|abgabe|administration|voie|entrega|via)\b/,
  uses: /\b(files used|uses|feilen|limes|limas)\b/,
  separated:
    /\b(separated|separations?|broken|frakturen|frakturiert|fracture\w*|fracturad[ao]s?)\b/,
  size: /\b(size|grosse|taille|diametre|calibre|tamano)\b/,
  taper_pct: /\b(taper|konizitat|conicite|conicidad)\b/,
  lot: /\b(lot|charge|lote)\b/,
  speed_per_min: /\b(speed|rpm|drehzahl|vitesse|velocidad)\b/,
  torque_n_cm: /\b(torque|drehmoment|couple|par)\b/,
  device: /\b(device|motor|pump|gerat|pumpe|appareil|moteur|pompe|equipo|bomba)\b/,
  task: /\b(task|aufgabe|tache|programme?|tarea|programm|programa)\b/,
  day: /\b(day|date|tag|datum|jour|dia|fecha)\b/,
  status: /\b(status|done|erledigt|etat|fait|estado|hecho)\b/,
  done_by: /\b(by|von|par|por)\b/,
};

/** Columns that say whether a step of the protocol was done, by the step. */
export const stepNames: Readonly<Record<string, RegExp>> = {
  dam: /\b(dam|kofferdam|digue|dique)\b/,
  consent: /\b(consent|einwilligung|consentement|consentimiento)\b/,
  patency: /\b(patency|patenz|permeabilite|permeabilidad)\b/,
  "glide-path": /\b(glide path|gleitpfad|catheterisme|permeabilizacion)\b/,
};

/** A column's name as it is compared: lower case, no accents, everything but letters and digits a blank. */
export function comparable(name: string): string {
  return name
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .replace(/ß/g, "ss")
    .replace(/³/g, "3")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, " ")
    .trim();
}
