/** Words that make another food of the one they stand beside: cooked lentils hold a third of what dry ones do. */
const COOKING =
  "baked blanched boiled braised cooked dried frozen poached pureed roasted soaked sprouted steamed stewed";

/** Words that tell of salt, fat, sugar or more in a food that no list of ingredients names beside it. */
const ADDING =
  "battered bottled breaded brined buttered candied canned confit corned crumbed crystallised crystallized cured " +
  "fermented fried jarred marinated oiled pickled preserved salted seasoned smoked sugared sweetened tinned";

const added: ReadonlySet<string> = new Set(ADDING.split(" "));
const changing: ReadonlySet<string> = new Set([...COOKING.split(" "), ...added]);

/** "In light syrup", "with a pinch of salt", "from a can": what a food lies in, or comes with. */
const LIES_IN = new RegExp(
  "\\b(?:(?:in|from|under)\\s+(?:[\\p{L}'’-]+\\s+){0,3}" +
    "(?:brine|broth|butter|cans?|fat|honey|jars?|juice|lard|oil|salt|stock|sugar|syrup|tins?|vinegar)|" +
    "with\\s+(?:[\\p{L}'’-]+\\s+){0,3}(?:butter|honey|oil|salt|sugar|syrup))\\b",
  "u",
);
/** "No salt", "without added oil": what is not in it changes nothing here. */
const DENIED = /\b(?:no|not|without)(?:[\s-]+(?:any|added|extra|too))*[\s-]+\p{L}+/gu;

const wordsOf = (text: string): readonly string[] => text.toLowerCase().split(/[^\p{L}]+/u);

const withoutDenials = (part: string): string => part.toLowerCase().replace(DENIED, " ");

/**
 * The word or words of a preparation that make another food of it, as written there; null where none does.
 * @param item whose own words count no second time: "fried egg, fried in a pan"
 * @param parts of the preparation, as its commas part them
 */
export function changeIn(item: string, parts: readonly string[]): string | null {
  const said = new Set(wordsOf(item));
  const plain = parts.map(withoutDenials);
  const word = plain.flatMap(wordsOf).find((one) => changing.has(one) && !said.has(one));
  return word ?? plain.map((part) => LIES_IN.exec(part)?.[0]).find((one) => one !== undefined) ?? null;
}

/** Whether a preparation tells of something in a food that nothing else names: "fried", "in syrup". */
export function tellsMore(item: string, preparation: string | null): boolean {
  const said = new Set(wordsOf(item));
  const plain = (preparation ?? "").split(",").map(withoutDenials);
  return plain.some(
    (part) => LIES_IN.test(part) || wordsOf(part).some((word) => added.has(word) && !said.has(word)),
  );
}
