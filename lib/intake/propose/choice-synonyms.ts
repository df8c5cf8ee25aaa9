import { comparable } from "./column-names";

type Synonyms = readonly (readonly [choice: string, says: RegExp])[];

/** Beginnings of words that stand for a field's choices, in the same languages; the first that fits is taken. */
const synonyms: Readonly<Record<string, Synonyms>> = {
  irrigant: [
    ["naocl", /hypochlor|naocl|bleach|javel|hipoclor/],
    ["edta", /edta/],
    ["chx", /chlorhexid|chx|clorhexid/],
    ["citric-acid", /citri|zitron/],
    ["hedp", /hedp|etidron/],
    ["saline", /saline|kochsalz|nacl|serum|suero|salin/],
    ["water", /water|wasser|\beau\b|agua/],
  ],
  delivery: [
    ["syringe", /syringe|spritze|seringue|jeringa/],
    ["negative-pressure", /negativ|unterdruck|depression/],
    ["continuous", /contin|fortlaufend|kontinu/],
  ],
  treatment: [
    ["retreatment", /^re |retreat|revision|retrait|retrat/],
    ["primary", /^rct$|root canal|primary|first|erst|wurzelkanal|initial|primer/],
    ["emergency", /emerg|notfall|urgen/],
    ["dressing", /dressing|einlage|pansement|\bcura\b/],
  ],
  outcome: [
    ["continuing", /^contin|fortgesetzt|en cours|en curso/],
    ["completed", /complet|fertig|abgeschlossen|termin|finish/],
    ["abandoned", /abandon|abgebrochen/],
  ],
  difficulty: [
    ["low", /^(l|low|leicht|facile|facil|baja)$/],
    ["moderate", /^(m|moderate|mittel|moyen|moyenne|media)$/],
    ["high", /^(h|high|schwer|difficile|dificil|alta)$/],
  ],
  length_method: [
    ["both", /both|beide|les deux|ambos/],
    ["locator", /locat|lokal|local/],
    ["radiograph", /radio|rontgen|x ray/],
    ["estimate", /estim|schatz/],
  ],
  preparation: [
    ["oscillating", /oscil|oszil/],
    ["reciprocating", /recip|rezip/],
    ["rotary", /rota|rotier/],
    ["hand", /hand|manu/],
    ["none", /^(none|keine|aucune|ninguna)$/],
  ],
};

/** A mark of yes or no as people tick lists; null where it says that nobody knows. */
export function tickOf(text: string): "yes" | "no" | null | undefined {
  if (/^(x|✓|✔|1|y|yes|j|ja|oui|o|si|s|true)$/i.test(text.normalize("NFD").replace(/\p{M}/gu, "")))
    return "yes";
  if (/^(-|–|0|n|no|nein|non|false)$/i.test(text)) return "no";
  return text === "?" ? null : undefined;
}

/** The choice of a field that a word of the file most likely stands for; undefined where none is likely. */
export function choiceFor(field: string, text: string): string | undefined {
  const word = comparable(text);
  const of = field === "kind" ? "preparation" : field;
  return synonyms[of]?.find(([, says]) => says.test(word))?.[0];
}
