import { parseSpokenNumber } from "../../units/number-words.ts";
import { formatRational } from "../../units/rational.ts";

/** Words with their numbers in figures and without courtesies: what two ways of saying one thing have in common. */
export function essence(words: readonly string[]): string {
  const out: string[] = [];
  let at = 0;
  while (at < words.length) {
    const number = parseSpokenNumber(words, at);
    if (number !== null) out.push(formatRational(number.value));
    else if (words[at] !== "please") out.push(words[at] ?? "");
    at = number?.next ?? at + 1;
  }
  return out.join(" ");
}
