/** What a unit measures. `count` units name a thing (a clove), `bit` units a small amount nobody weighs. */
export type Dimension = "mass" | "volume" | "count" | "bit";

/** How one unit is told and written. `spellings` are lower case, besides the spoken and short forms. */
export type UnitWords = {
  readonly dimension: Dimension;
  readonly one: string;
  readonly many: string;
  readonly short: string;
  readonly spellings: readonly string[];
};

function row(
  dimension: Dimension,
  one: string,
  many: string,
  short: string,
  ...spellings: string[]
): UnitWords {
  return { dimension, one, many, short, spellings };
}

/** A thing counted by name, written in full on the screen. */
function thing(one: string, many: string, ...spellings: string[]): UnitWords {
  return row("count", one, many, one, ...spellings);
}

/**
 * Every unit an amount may carry. US measures are the default and own the bare names;
 * imperial, Australian, metric-cup and nutrition-label measures have ids and names of their own.
 */
export const UNITS = {
  mg: row("mass", "milligram", "milligrams", "mg", "mgs", "milligramme", "milligrammes"),
  g: row("mass", "gram", "grams", "g", "gm", "gms", "gr", "gramme", "grammes"),
  kg: row("mass", "kilogram", "kilograms", "kg", "kgs", "kilo", "kilos", "kilogramme", "kilogrammes"),
  oz: row("mass", "ounce", "ounces", "oz", "ozs"),
  lb: row("mass", "pound", "pounds", "lb", "lbs"),
  ml: row("volume", "milliliter", "milliliters", "ml", "mls", "millilitre", "millilitres", "cc"),
  cl: row("volume", "centiliter", "centiliters", "cl", "centilitre", "centilitres"),
  dl: row("volume", "deciliter", "deciliters", "dl", "decilitre", "decilitres"),
  l: row("volume", "liter", "liters", "l", "litre", "litres"),
  tsp: row("volume", "teaspoon", "teaspoons", "tsp", "tsps", "teasp"),
  tbsp: row("volume", "tablespoon", "tablespoons", "tbsp", "tbsps", "tbs", "tbl", "tblsp"),
  "fl-oz": row("volume", "fluid ounce", "fluid ounces", "fl oz", "fl-oz", "floz"),
  cup: row("volume", "cup", "cups", "cup", "c"),
  pint: row("volume", "pint", "pints", "pt", "pts"),
  quart: row("volume", "quart", "quarts", "qt", "qts"),
  gallon: row("volume", "gallon", "gallons", "gal", "gals"),
  "imperial-fl-oz": row("volume", "imperial fluid ounce", "imperial fluid ounces", "imp fl oz", "uk fl oz"),
  "imperial-cup": row("volume", "imperial cup", "imperial cups", "imp cup", "uk cup", "uk cups"),
  "imperial-pint": row("volume", "imperial pint", "imperial pints", "imp pt", "uk pint", "uk pints"),
  "imperial-quart": row("volume", "imperial quart", "imperial quarts", "imp qt"),
  "imperial-gallon": row("volume", "imperial gallon", "imperial gallons", "imp gal"),
  "metric-tsp": row("volume", "metric teaspoon", "metric teaspoons", "metric tsp"),
  "metric-tbsp": row("volume", "metric tablespoon", "metric tablespoons", "metric tbsp"),
  "metric-cup": row("volume", "metric cup", "metric cups", "metric cup", "australian cup", "australian cups"),
  "australian-tbsp": row("volume", "Australian tablespoon", "Australian tablespoons", "Aus tbsp", "au tbsp"),
  "label-tsp": row("volume", "label teaspoon", "label teaspoons", "label tsp"),
  "label-tbsp": row("volume", "label tablespoon", "label tablespoons", "label tbsp"),
  "label-fl-oz": row("volume", "label fluid ounce", "label fluid ounces", "label fl oz"),
  "label-cup": row("volume", "label cup", "label cups", "label cup"),
  pinch: row("bit", "pinch", "pinches", "pinch"),
  dash: row("bit", "dash", "dashes", "dash"),
  drop: row("bit", "drop", "drops", "drop"),
  splash: row("bit", "splash", "splashes", "splash"),
  handful: row("bit", "handful", "handfuls", "handful", "handsful"),
  piece: thing("piece", "pieces", "pc", "pcs"),
  clove: thing("clove", "cloves"),
  head: thing("head", "heads"),
  bulb: thing("bulb", "bulbs"),
  can: thing("can", "cans", "tin", "tins"),
  jar: thing("jar", "jars"),
  bag: thing("bag", "bags"),
  bottle: thing("bottle", "bottles"),
  packet: thing("packet", "packets", "package", "packages", "pkg", "pkgs", "pkt"),
  box: thing("box", "boxes"),
  carton: thing("carton", "cartons"),
  tub: thing("tub", "tubs"),
  punnet: thing("punnet", "punnets"),
  slice: thing("slice", "slices"),
  sheet: thing("sheet", "sheets"),
  stick: thing("stick", "sticks"),
  block: thing("block", "blocks"),
  bunch: thing("bunch", "bunches"),
  sprig: thing("sprig", "sprigs"),
  stalk: thing("stalk", "stalks"),
  rib: thing("rib", "ribs"),
  leaf: thing("leaf", "leaves"),
  ear: thing("ear", "ears"),
  knob: thing("knob", "knobs"),
  cube: thing("cube", "cubes"),
  fillet: thing("fillet", "fillets"),
  strip: thing("strip", "strips"),
  wedge: thing("wedge", "wedges"),
} as const satisfies Record<string, UnitWords>;

/** The id of a unit, as stored in recipes and the meal log. */
export type Unit = keyof typeof UNITS;

/** Whether a text is the id of a unit. */
export function isUnit(text: string): text is Unit {
  return Object.hasOwn(UNITS, text);
}

/** Every unit id, in the order of the table. */
export const UNIT_IDS: readonly Unit[] = Object.keys(UNITS).filter(isUnit);

/** How a unit is told and written. */
export const unitWords = (unit: Unit): UnitWords => UNITS[unit];

const BY_SPELLING: ReadonlyMap<string, Unit> = new Map(
  UNIT_IDS.flatMap((id) => {
    const words = unitWords(id);
    return [id, words.one, words.many, words.short, ...words.spellings].map((spelling): [string, Unit] => [
      spelling.toLowerCase(),
      id,
    ]);
  }),
);

/**
 * The unit a person wrote or said, or null. Full stops are ignored ("tbsp.").
 * Case is ignored too, but for the cook's shorthand "T" (tablespoon) and "t" (teaspoon).
 */
export function findUnit(written: string): Unit | null {
  const text = written.trim().replaceAll(".", "").replace(/\s+/g, " ");
  if (text === "T") return "tbsp";
  if (text === "t") return "tsp";
  return BY_SPELLING.get(text.toLowerCase()) ?? null;
}
