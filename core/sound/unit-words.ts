/** Units and abbreviations that may stand in a recipe's text, spelt out for the ear. */

/** Singular and plural. Case matters only where noted in `unitWord`. */
const units: Readonly<Record<string, readonly [string, string]>> = {
  tbsp: ["tablespoon", "tablespoons"],
  tbsps: ["tablespoon", "tablespoons"],
  tbs: ["tablespoon", "tablespoons"],
  tsp: ["teaspoon", "teaspoons"],
  tsps: ["teaspoon", "teaspoons"],
  oz: ["ounce", "ounces"],
  lb: ["pound", "pounds"],
  lbs: ["pound", "pounds"],
  qt: ["quart", "quarts"],
  pt: ["pint", "pints"],
  gal: ["gallon", "gallons"],
  g: ["gram", "grams"],
  kg: ["kilogram", "kilograms"],
  mg: ["milligram", "milligrams"],
  ml: ["milliliter", "milliliters"],
  cl: ["centiliter", "centiliters"],
  dl: ["deciliter", "deciliters"],
  l: ["liter", "liters"],
  mm: ["millimeter", "millimeters"],
  cm: ["centimeter", "centimeters"],
  s: ["second", "seconds"],
  sec: ["second", "seconds"],
  secs: ["second", "seconds"],
  min: ["minute", "minutes"],
  mins: ["minute", "minutes"],
  h: ["hour", "hours"],
  hr: ["hour", "hours"],
  hrs: ["hour", "hours"],
  kcal: ["kilocalorie", "kilocalories"],
  w: ["watt", "watts"],
};

/** The pattern of one unit, to be put after a number; longest first, so that "mg" is not read as "m". */
export const unitPattern = Object.keys(units)
  .sort((a, b) => b.length - a.length)
  .join("|");

/** @param unit as written @param isOne whether the number before it is exactly one (or one half) */
export function unitWord(unit: string, isOne: boolean): string {
  const found = units[unit.toLowerCase()];
  if (found === undefined) return unit;
  return isOne ? found[0] : found[1];
}

/**
 * The full stop of an abbreviation in mid-sentence: it would make the synthesiser drop its voice. Before a capital
 * letter or at the end it is a real one and stays.
 */
const inSentence =
  /\b(?:([Aa]pprox|[Mm]ax)\.(?=\s*\d)|([Aa]pprox|[Mm]ins?|[Hh]rs?|[Ss]ecs?|[Tt]bsps?|[Tt]sps?|[Mm]ax|[Tt]emp|oz|lbs?|qt|pt|etc|vs|[ap]\.?m)\.(?=\s+[a-z(]|[,;:]))/g;

/** Abbreviations without a number, each with what is said. The order is the order of reading. */
const abbreviations: readonly (readonly [RegExp, string])[] = [
  [/\bw\/o\b/gi, "without"],
  [/\bw\/(?=\s|[a-z])/gi, "with "],
  [/\band\/or\b/gi, "and or"],
  [/\bapprox\b/gi, "about"],
  [/\bmins?\b/gi, "minutes"],
  [/\bhrs?\b/gi, "hours"],
  [/\bsecs?\b/gi, "seconds"],
  [/\btbsps?\b/gi, "tablespoons"],
  [/\btsps?\b/gi, "teaspoons"],
  [/\bmax\b/gi, "at most"],
  [/\btemp\b/gi, "temperature"],
  [/\bNo\.\s*(?=\d)/g, "number "],
  [/#\s*(?=\d)/g, "number "],
  [/\be\.\s?g\.,?/gi, "for example"],
  [/\bi\.\s?e\.,?/gi, "that is"],
  [/\betc\b/gi, "and so on"],
  [/\bvs\b/gi, "versus"],
];

/** Takes away the full stops that end no sentence. */
export function dropAbbreviationStops(text: string): string {
  return text.replace(inSentence, "$1$2");
}

/** Spells out the abbreviations that stand by themselves. */
export function spellAbbreviations(text: string): string {
  return abbreviations.reduce((so, [pattern, words]) => so.replace(pattern, words), text);
}
