import { listed } from "../../cook/say-call.ts";
import { keyOfThing, thingIs } from "../../house/wanted.ts";
import type { HandLine } from "../../shop/at-hand.ts";
import { numberWords } from "../../units/number-words.ts";
import { capital } from "../../units/capital.ts";
import { breathWords, countWords } from "../speech.ts";

/** "two", "seven cloves": figures that are short to say become words, measures stay as they are written. */
const figures = (text: string): string =>
  text.replace(/\b(\d{1,3})(?=$| [a-z]{4})/g, (_, figure: string) => numberWords(Number(figure)));

/** The first thing that is said of how much: "seven cloves" of "7 cloves, about a head"; "" where nobody says. */
const amountOf = ({ buy }: HandLine): string => figures(buy.split(",")[0] ?? "");

/** "Two lemons", "garlic, seven cloves", "salt". */
export function lineWords(line: HandLine): string {
  const amount = amountOf(line);
  if (amount === "") return line.name;
  return /^[a-z-]+$/.test(amount) && /^\d+$/.test(line.buy.split(",")[0] ?? "")
    ? `${amount} ${line.name}`
    : `${line.name}, ${amount}`;
}

/** For which dishes, from its words: "2 for the soup, 1 tbsp juice for the salad (lemon juice)". */
const dishesOf = ({ shares }: HandLine): readonly string[] => [
  ...new Set([...shares.matchAll(/\bfor the ([^,(]+)/g)].map(([, dish = ""]) => `the ${dish.trim()}`)),
];

/** "Lemons are on the list already: two, for the soup." */
export function sayAlready(line: HandLine): string {
  const is = `${thingIs(line.name)} on the list already`;
  const dishes = dishesOf(line);
  const amount = amountOf(line);
  const told = dishes.length === 0 ? amount : `${amount === "" ? "" : `${amount}, `}for ${listed(dishes)}`;
  const whole = `${is}: ${told}.`;
  return told === "" || countWords(whole) > breathWords ? `${is}.` : whole;
}

/** "Eight left.", "That was the last one." */
export const sayLeft = (count: number): string =>
  count === 0 ? "That was the last one." : `${capital(numberWords(count))} left.`;

/** "Nine things to buy." */
export const sayCount = (count: number): string =>
  `${capital(numberWords(count))} ${count === 1 ? "thing" : "things"} to buy.`;

/** The list by place in parts of one breath each; a place that goes on in the next part is named again. */
export function listParts(lead: string, lines: readonly HandLine[]): readonly string[] {
  const parts: string[] = [];
  let [current, place] = [lead, ""];
  for (const line of lines) {
    const isSame = line.place === place;
    const more = isSame ? `${current.slice(0, -1)}; ${lineWords(line)}.` : inPlace(current, line);
    // One word is kept free for "More?".
    const fits = current === "" || countWords(more) < breathWords;
    if (!fits) parts.push(current);
    current = fits ? more : inPlace("", line);
    place = line.place;
  }
  return current === "" ? parts : [...parts, current];
}

const inPlace = (before: string, line: HandLine): string =>
  `${before} ${capital(line.place)}: ${lineWords(line)}.`.trim();

/** Whether a line is of that very thing. */
export const isThing = (line: HandLine, name: string): boolean => keyOfThing(line.name) === keyOfThing(name);
