import type { SpokenValue } from "../units/spoken-words.ts";
import { isFiller, nameWord } from "./utterance.ts";

type Index = ReadonlyMap<string, readonly (readonly string[])[]>;

// Looked up for every slot of every line, so the names of a meal are split and sorted by their first word once.
const indexes = new WeakMap<readonly string[], Index>();

function indexOf(names: readonly string[]): Index {
  const known = indexes.get(names);
  if (known !== undefined) return known;
  const index = new Map<string, (readonly string[])[]>();
  for (const name of names) {
    const words = name.split(" ");
    const first = words[0] ?? "";
    index.set(first, [...(index.get(first) ?? []), words]);
  }
  indexes.set(names, index);
  return index;
}

/** Every name of the list that stands in `words` from word `from` on; articles within are passed over. */
export function readName(
  words: readonly string[],
  from: number,
  names: readonly string[],
): readonly SpokenValue<string>[] {
  const first = nameWord(words[from] ?? "")[0] ?? "";
  return (indexOf(names).get(first) ?? []).flatMap((name) => {
    const next = endOf(name, words, from);
    return next === null ? [] : [{ value: name.join(" "), next }];
  });
}

function endOf(name: readonly string[], words: readonly string[], from: number): number | null {
  let at = from;
  for (let index = 0; index < name.length;) {
    const word = words[at];
    if (word === undefined) return null;
    const said = nameWord(word);
    if (said.every((part, offset) => name[index + offset] === part)) {
      index += said.length;
    } else if (index === 0 || !isFiller(word)) {
      return null;
    }
    at += 1;
  }
  return at;
}
