import pluralize from "pluralize";

/**
 * Kitchen nouns that the general rules of English get wrong: no plural that a cook would say of what is in the
 * pot ("lemon juice", never "lemon juices"), or a singular in -s.
 * Kept here rather than added to the library, whose rules are shared by the whole process.
 */
const UNCHANGING: ReadonlySet<string> = new Set([
  "allspice",
  "anise",
  "asparagus",
  "barley",
  "basil",
  "bass",
  "batter",
  "broccoli",
  "broth",
  "brussels",
  "bulgur",
  "butter",
  "celery",
  "chard",
  "cilantro",
  "cinnamon",
  "citrus",
  "cocoa",
  "coffee",
  "coriander",
  "corn",
  "cornstarch",
  "couscous",
  "cream",
  "cress",
  "cumin",
  "dill",
  "dough",
  "edamame",
  "farro",
  "fennel",
  "flour",
  "garlic",
  "ginger",
  "haggis",
  "hibiscus",
  "honey",
  "hummus",
  "juice",
  "kachumber",
  "kale",
  "kelp",
  "lemongrass",
  "milk",
  "millet",
  "mint",
  "miso",
  "molasses",
  "mustard",
  "nori",
  "nutmeg",
  "oil",
  "okra",
  "oregano",
  "paprika",
  "parsley",
  "pasta",
  "polenta",
  "porridge",
  "powder",
  "quinoa",
  "rice",
  "rosemary",
  "saffron",
  "sage",
  "salt",
  "sauce",
  "seitan",
  "sesame",
  "shiitake",
  "soda",
  "spinach",
  "starch",
  "stock",
  "sugar",
  "swiss",
  "syrup",
  "tahini",
  "tea",
  "tempeh",
  "thyme",
  "tofu",
  "turmeric",
  "vinegar",
  "water",
  "watercress",
  "wine",
  "yeast",
  "yoghurt",
  "yogurt",
  "zaatar",
  "zest",
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

/** Answers already worked out: the library takes some 25 µs a word, and every utterance asks for the whole larder. */
const KNOWN_ONES = new Map<string, string>();
const MOST_KNOWN = 4096;

function wordToOne(word: string): string {
  const known = KNOWN_ONES.get(word);
  if (known !== undefined) return known;
  const one = UNCHANGING.has(word) ? word : (TO_ONE.get(word) ?? pluralize.singular(word));
  if (KNOWN_ONES.size >= MOST_KNOWN) KNOWN_ONES.clear();
  KNOWN_ONES.set(word, one);
  return one;
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

/** A name in the three forms it is compared in, from the strictest to the loosest. */
export type FoodForms = {
  /** As `normaliseFood` gives it. */
  readonly plain: string;
  /** Without the part it is counted in: "garlic cloves" and "a clove of garlic" are "garlic". */
  readonly itself: string;
  /** Without words for its state either: "the chopped fresh dill" is "dill". */
  readonly undressed: string;
};

/** Drops words unless nothing would be left: "cloves" alone are the spice. */
function without(words: readonly string[], dropped: ReadonlySet<string>): readonly string[] {
  const kept = words.filter((word) => !dropped.has(word));
  return kept.length === 0 ? words : kept;
}

/** The forms a name is compared in, made together because turning words into the singular is slow. */
export function foodForms(name: string): FoodForms {
  const plain = normaliseFood(name);
  const itself = without(plain.split(" "), SHAPES);
  return { plain, itself: itself.join(" "), undressed: without(itself, STATES).join(" ") };
}
