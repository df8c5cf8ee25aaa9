/**
 * What a reader must know beside any figure. Shown on every page that has figures and written into every
 * export, in this order. Own words for the cautions that professional review asks for.
 */
export const cautions: readonly string[] = [
  "These figures are there to start a professional conversation; they do not take its place.",
  "They describe records, not people: nobody's competence can be read from them.",
  "Local protocols, the makers' instructions for use and what a licence allows come first.",
  "Sodium hypochlorite harms tissue. Nothing here is an instruction for treating a patient.",
  "Rinsing lines and caring for handpieces is upkeep of equipment. It does not decontaminate anything.",
  "Figures about staff are personal data: share them only with those whose task needs them.",
];
