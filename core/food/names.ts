import pluralize from "pluralize";

/**
 * Kitchen nouns that the general rules of English get wrong: no plural, or a singular in -s.
 * Kept here rather than added to the library, whose rules are shared by the whole process.
 */
const UNCHANGING: ReadonlySet<string> = new Set([
  "allspice",
  "anise",
  "asparagus",
  "bass",
  "broccoli",
  "brussels",
  "celery",
  "chard",
  "cilantro",
  "citrus",
  "corn",
  "couscous",
  "cress",
  "cumin",
  "dill",
  "edamame",
  "fennel",
  "flour",
  "garlic",
  "ginger",
  "haggis",
  "hibiscus",
  "hummus",
  "kale",
  "kelp",
  "lemongrass",
  "miso",
  "molasses",
  "nori",
  "okra",
  "oregano",
  "paprika",
  "parsley",
  "pasta",
  "polenta",
  "quinoa",
  "rice",
  "seitan",
  "sesame",
  "shiitake",
  "spinach",
  "swiss",
  "tahini",
  "tempeh",
  "thyme",
  "tofu",
  "turmeric",
  "watercress",
  "zaatar",
]);

const IRREGULAR: readonly (readonly [string, string])[] = [
  ["leaf", "leaves"],
  ["loaf", "loaves"],
  ["half", "halves"],
  ["calf", "calves"],
  ["knife", "knives"],
  ["potato", "potatoes"],
  ["tomato", "tomatoes"],
  ["mango", "mangoes"],
  ["avocado", "avocados"],
  ["jalapeno", "jalapenos"],
  ["chili", "chilies"],
  ["chilli", "chillies"],
  ["chile", "chiles"],
  ["radish", "radishes"],
  ["squash", "squashes"],
  ["olive", "olives"],
  ["chive", "chives"],
  ["clove", "cloves"],
  ["endive", "endives"],
  ["cookie", "cookies"],
  ["brownie", "brownies"],
  ["anchovy", "anchovies"],
];
const TO_MANY: ReadonlyMap<string, string> = new Map(IRREGULAR);
const TO_ONE: ReadonlyMap<string, string> = new Map([
  ...IRREGULAR.map(([one, many]): [string, string] => [many, one]),
  ["chilis", "chili"],
  ["chillis", "chilli"],
  ["mangos", "mango"],
  ["halfs", "half"],
]);

function lastWord(name: string): { readonly before: string; readonly last: string } {
  const cut = name.search(/[^\s-]+$/);
  return { before: name.slice(0, Math.max(cut, 0)), last: name.slice(Math.max(cut, 0)) };
}

function wordToOne(word: string): string {
  return UNCHANGING.has(word) ? word : (TO_ONE.get(word) ?? pluralize.singular(word));
}

function wordToMany(word: string): string {
  return UNCHANGING.has(word) ? word : (TO_MANY.get(wordToOne(word)) ?? pluralize.plural(wordToOne(word)));
}

/** One of a food: "sweet potatoes" is "sweet potato". Lower-case names; the last word is changed. */
export function singularOf(name: string): string {
  const { before, last } = lastWord(name);
  return before + wordToOne(last);
}

/** Several of a food: "bay leaf" is "bay leaves"; "rice" stays. Lower-case names; the last word is changed. */
export function pluralOf(name: string): string {
  const { before, last } = lastWord(name);
  return before + wordToMany(last);
}

/** Whether a name already stands for several: "red lentils". Foods without a plural count as one. */
export function isPlural(name: string): boolean {
  const { last } = lastWord(name.toLowerCase());
  return wordToOne(last) !== last;
}

const FILLERS: ReadonlySet<string> = new Set([
  "a",
  "an",
  "the",
  "my",
  "our",
  "your",
  "some",
  "any",
  "of",
  "this",
  "that",
  "these",
  "those",
  "more",
  "please",
]);

/** The form names are compared in: lower case, no accents, no hyphens, no articles, every word in the singular. */
export function normaliseFood(name: string): string {
  return name
    .toLowerCase()
    .replaceAll("œ", "oe")
    .replaceAll("æ", "ae")
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .replace(/['’ʼ]/g, "")
    .replace(/[^\p{L}\d]+/gu, " ")
    .split(" ")
    .filter((word) => word !== "" && !FILLERS.has(word))
    .map(wordToOne)
    .join(" ");
}

/** Words for a part or a shape; beside a food they add nothing to what it is. */
const SHAPES: ReadonlySet<string> = new Set([
  "bulb",
  "bunch",
  "can",
  "clove",
  "cube",
  "ear",
  "handful",
  "head",
  "knob",
  "leaf",
  "piece",
  "rib",
  "sheet",
  "slice",
  "sprig",
  "stalk",
  "stick",
]);

/**
 * What the food is, without the part it is counted in: "garlic cloves" and "a clove of garlic" are "garlic".
 * A part alone is a food of its own ("cloves" the spice).
 */
export function foodItself(name: string): string {
  const words = normaliseFood(name).split(" ");
  const kept = words.filter((word) => !SHAPES.has(word));
  return (kept.length === 0 ? words : kept).join(" ");
}

/** Words for a state; the food stays the same food with or without them. "Almond" or "coconut" never belong here. */
const STATES: ReadonlySet<string> = new Set([
  "baked",
  "big",
  "boiled",
  "chopped",
  "cold",
  "cooked",
  "crushed",
  "diced",
  "drained",
  "fresh",
  "grated",
  "halved",
  "hot",
  "large",
  "leftover",
  "medium",
  "minced",
  "other",
  "peeled",
  "raw",
  "remaining",
  "rest",
  "rinsed",
  "ripe",
  "roasted",
  "shredded",
  "sliced",
  "small",
  "steamed",
  "toasted",
  "warm",
  "washed",
  "whole",
]);

/** The food without words for its state: "the chopped fresh dill" is "dill". */
export function foodUndressed(name: string): string {
  const words = foodItself(name).split(" ");
  const kept = words.filter((word) => !STATES.has(word));
  return (kept.length === 0 ? words : kept).join(" ");
}
