import { normaliseFood } from "../food/names.ts";
import type { Mistake } from "../recipe/mistake.ts";

/** Where something is in the shop. */
export interface Place {
  readonly name: string;
  /** The lower, the sooner one walks past it. */
  readonly order: number;
}

/** The place of each food, by the names as `normaliseFood` gives them. */
export type Places = ReadonlyMap<string, Place>;

/** Where things are that have no place. */
export const elsewhere: Place = { name: "somewhere else", order: 1_000 };

/** What a table of places holds, and what is wrong in it. */
export interface PlacesRead {
  readonly places: Places;
  readonly mistakes: readonly Mistake[];
}

/** Names go on in the next line; "or" before them says that the table of foods does not have them. */
const namesIn = (line: string): readonly string[] =>
  line
    .trim()
    .replace(/^or /, "")
    .split(";")
    .map((name) => name.trim())
    .filter((name) => name !== "");

/**
 * Reads where things are in the shop; the format stands at the top of recipes/foods/places.txt.
 * @param file the name to put on mistakes
 */
export function readPlaces(file: string, text: string): PlacesRead {
  const places = new Map<string, Place>();
  const mistakes: Mistake[] = [];
  const wrong = (index: number, sentence: string): void =>
    void mistakes.push({ file, line: index + 1, field: "", sentence });
  let place: Place | null = null;
  let count = 0;
  for (const [index, line] of text.split(/\r?\n/).entries()) {
    if (line.trim() === "" || line.startsWith("#")) continue;
    if (!/^\s/.test(line)) {
      place = { name: line.trim(), order: count };
      count += 1;
      continue;
    }
    if (place === null) {
      wrong(index, "This line belongs to no place; write the place's name above it.");
      continue;
    }
    for (const name of namesIn(line)) {
      const plain = normaliseFood(name);
      const other = places.get(plain);
      if (other === undefined) places.set(plain, place);
      else wrong(index, `"${name}" already stands under ${other.name}; a food has one place.`);
    }
  }
  return { places, mistakes };
}

/** Where a thing is. @param names its names, the surest first */
export function placeOf(places: Places, names: readonly string[]): Place {
  return (
    names.map((name) => places.get(normaliseFood(name))).find((place) => place !== undefined) ?? elsewhere
  );
}
