import { comparable } from "./column-names";

type Synonyms = readonly (readonly [choice: string, says: RegExp])[];

/** Beginnings of words that stand for a field's choices, in the same languages; the first that fits is taken. */
const synonyms: Readonly<Record<string, Synonyms>> = {
  irrigant: [
    // Hydrogen peroxide has water in its name, in German and French.
    ["other", /peroxid|wasserstoff|oxygen|h2o2/],
    ["naocl", /hypochlor|naocl|bleach|javel|hipoclor/],
    ["edta", /edta/],
    ["chx", /chlorhexid|\bchx|clorhexid/],
    ["citric-acid", /citri|zitron/],
    ["hedp", /hedp|etidron/],
    ["saline", /saline|sodium chlorid|kochsalz|\bnacl|serum|suero|\bsalin/],
    ["water", /water|wasser|\beau\b|agua/],
  ],
  delivery: [
    ["syringe", /syringe|spritze|seringue|jeringa/],
    ["negative-pressure", /negativ|unterdruck|depression/],
    ["continuous", /contin|fortlaufend|kontinu/],
  ],
  activation: [
    ["ultrasonic", /ultras/],
    ["sonic", /sonic|sonisch|sonique/],
    ["manual", /manu|hand/],
    ["none", /^(none|keine|aucune|ninguna)$/],
  ],
  treatment: [
    ["retreatment", /^re |retreat|revision|retrait|retrat/],
    ["primary", /^rct$|root canal|primary|first|erst|wurzelkanal|initial|primer/],
    ["emergency", /emerg|notfall|urgen/],
    ["dressing", /dressing|einlage|pansement|\bcura\b/],
  ],
  outcome: [
    ["continuing", /^contin|fortgesetzt|en cours|a suivre|en curso/],
    ["completed", /^(complet|fertig|abgeschlossen|termin|finish)/],
    ["abandoned", /^(abandon|abgebrochen|interromp|interrump)/],
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
  timer_reset: [["no-timer", /^(no timer|without timer|ohne uhr|sans minut\w+|sin temporizador)$/]],
  task: [
    ["line-rinse", /rinse|spul|rincage|enjuag/],
    ["line-dry", /dry|trock|sech|secad/],
  ],
  // Vestibular is buccal where French and Spanish are spoken.
  canal: [
    ["MB1", /^mv ?1$/],
    ["MB2", /^mv ?2$/],
    ["MB3", /^mv ?3$/],
    ["MB", /^(mv|mesio ?(vestibul|bu[ck]k?c?al)\w*)$/],
    ["DB", /^(dv|disto ?(vestibul|bu[ck]k?c?al)\w*)$/],
    ["ML", /^mesio ?(lingual|palat)\w*$/],
    ["DL", /^disto ?lingual\w*$/],
    ["P", /^palat\w*$/],
    ["B", /^(v|vestibul\w*|bu[ck]k?c?al)$/],
    ["L", /^lingual\w*$/],
    ["M", /^mesial$/],
    ["D", /^distal$/],
    ["main", /^(single|only|einzige[rs]?|unique|unico)$/],
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
  const fitting = synonyms[field === "kind" ? "preparation" : field]?.filter(([, says]) =>
    says.test(word),
  );
  // Two agents in one cell are a mixture, and none of them.
  if (field === "irrigant" && fitting && fitting.length > 1 && fitting[0]?.[0] !== "other")
    return undefined;
  return fitting?.[0]?.[0];
}
