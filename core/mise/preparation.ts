import type { Place } from "./preparation-words-table.ts";
import { howWords, preparationWords, unlessWords } from "./preparation-words-table.ts";

/** One thing to do to a food: "finely chop", "cut … into sticks". */
export interface Act {
  readonly verb: string;
  /** Said before the verb: "finely"; or "". */
  readonly manner: string;
  /** Said behind the food: "into sticks"; or "". */
  readonly rest: string;
  readonly place: Place;
}

/** What a recipe says of a food's preparation: what is to be done, and words that were not understood, as they stand. */
export interface Work {
  readonly acts: readonly Act[];
  readonly words: readonly string[];
}

const isManner = (word: string): boolean => word.endsWith("ly") || word === "very" || word === "well";

/** "finely chopped", "cut into sticks"; null where it is no work that we know. */
function readAct(part: string): Act | null {
  const words = part.toLowerCase().split(/\s+/);
  const from = words.findIndex((word) => !isManner(word));
  const manners = words.slice(0, Math.max(0, from)).filter((word) => word !== "well");
  const isWell = words.slice(0, Math.max(0, from)).includes("well");
  const said = words.slice(from);
  for (const length of [2, 1]) {
    const known = preparationWords.get(said.slice(0, length).join(" "));
    if (known === undefined) continue;
    const rest = [...said.slice(length), ...(isWell ? ["well"] : [])];
    const [first = ""] = rest;
    if (first !== "" && !isManner(first) && !howWords.has(first) && !/^\d/.test(first)) return null;
    const [verb = "", ...behind] = known.verb.split(" ");
    // "Pick over the lentils", but "pat the tofu dry".
    return behind[0] === "over"
      ? { verb: known.verb, manner: manners.join(" "), rest: rest.join(" "), place: known.place }
      : { verb, manner: manners.join(" "), rest: [...behind, ...rest].join(" "), place: known.place };
  }
  return null;
}

const joins = /(\s*[,;]\s*(?:and\s+)?(?:then\s+)?|\s+and\s+(?:then\s+)?|\s+then\s+)/;

const saysWork = (words: readonly string[]): boolean =>
  words.some(
    (word, at) => preparationWords.has(word) || preparationWords.has(`${word} ${words[at + 1] ?? ""}`),
  );

/** Reads a recipe's preparation: "rinsed and picked over", "finely chopped, no salt added". */
export function readPreparation(text: string): Work {
  const words = text.toLowerCase().split(/[^a-z]+/);
  if (!saysWork(words) || words.some((word) => unlessWords.has(word)))
    return { acts: [], words: [text.trim()] };
  const acts: Act[] = [];
  const kept: string[] = [];
  let wasAct = false;
  const parts = text.trim().split(joins);
  for (let at = 0; at < parts.length; at += 2) {
    const part = parts[at] ?? "";
    const isAnd = /^\s+and/.test(parts[at - 1] ?? "");
    const act = readAct(part);
    const last = acts.at(-1);
    if (act !== null) acts.push(act);
    // "Cut into sticks and rounds", "ripe and sweet": the end of the same sentence.
    else if (isAnd && wasAct && last !== undefined && last.rest !== "")
      acts[acts.length - 1] = { ...last, rest: `${last.rest} and ${part}` };
    else if (isAnd && !wasAct && kept.length > 0) kept[kept.length - 1] = `${kept.at(-1) ?? ""} and ${part}`;
    else if (part !== "") kept.push(part);
    wasAct = act !== null || (wasAct && isAnd);
  }
  return acts.length === 0 ? { acts, words: [text.trim()] } : { acts, words: kept };
}
