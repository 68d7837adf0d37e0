import type { Phrase } from "../speech/grammar.ts";
import { contractedForms } from "./contractions.ts";
import type { SlotName } from "./slots.ts";
import { isSlotName } from "./slots.ts";

/** A line of the phrasebook, read. */
export type Pattern =
  | { readonly kind: "word"; readonly word: string }
  | { readonly kind: "slot"; readonly slot: SlotName }
  | { readonly kind: "rule"; readonly rule: string }
  | { readonly kind: "all"; readonly of: readonly Pattern[] }
  | { readonly kind: "any"; readonly of: readonly Pattern[] }
  | { readonly kind: "maybe"; readonly of: Pattern };

type Read = { readonly pattern: Pattern; readonly next: number };

const MARKS = /[()[\]|]|\{[a-z]+\}|<[a-z0-9-]+>|[^\s()[\]|{}<>]+/g;

/**
 * Reads the phrasebook's notation: words, `(a|b)`, `[may be left out]`, `{slot}`, `<rule>`.
 * Throws where the brackets do not match or a slot is unknown: the phrasebook is ours, so that is a bug.
 */
export function readPattern(text: string): Pattern {
  const marks = text.match(MARKS) ?? [];
  const read = readAny(marks, 0);
  if (read.next !== marks.length) throw new Error(`the pattern "${text}" has a bracket too many`);
  return read.pattern;
}

function readAny(marks: readonly string[], from: number): Read {
  const of: Pattern[] = [];
  let at = from;
  for (;;) {
    const all = readAll(marks, at);
    of.push(all.pattern);
    if (marks[all.next] !== "|") return { pattern: single(of, "any"), next: all.next };
    at = all.next + 1;
  }
}

function readAll(marks: readonly string[], from: number): Read {
  const of: Pattern[] = [];
  let at = from;
  for (let mark = marks[at]; mark !== undefined && !/^[|)\]]$/.test(mark); mark = marks[at]) {
    const read = readOne(marks, at, mark);
    of.push(read.pattern);
    at = read.next;
  }
  return { pattern: single(of, "all"), next: at };
}

function readOne(marks: readonly string[], at: number, mark: string): Read {
  if (mark === "(" || mark === "[") {
    const inner = readAny(marks, at + 1);
    const close = mark === "(" ? ")" : "]";
    if (marks[inner.next] !== close) throw new Error(`the pattern "${marks.join(" ")}" misses a "${close}"`);
    return {
      pattern: mark === "(" ? inner.pattern : { kind: "maybe", of: inner.pattern },
      next: inner.next + 1,
    };
  }
  const name = mark.slice(1, -1);
  if (mark.startsWith("<")) return { pattern: { kind: "rule", rule: name }, next: at + 1 };
  if (!mark.startsWith("{")) return { pattern: { kind: "word", word: mark }, next: at + 1 };
  if (!isSlotName(name)) throw new Error(`the pattern "${marks.join(" ")}" has an unknown slot ${mark}`);
  return { pattern: { kind: "slot", slot: name }, next: at + 1 };
}

function single(of: readonly Pattern[], kind: "all" | "any"): Pattern {
  const [only] = of;
  return of.length === 1 && only !== undefined ? only : { kind, of };
}

/**
 * The pattern as the recogniser's grammar has it; "what is" also as "what's". What cannot be said because a slot
 * has nothing to name is left out; null when nothing remains.
 */
export function toPhrase(pattern: Pattern, hasNames: (slot: SlotName) => boolean): Phrase | null {
  switch (pattern.kind) {
    case "word":
      return { kind: "words", text: pattern.word };
    case "slot":
      return hasNames(pattern.slot) ? { kind: "rule", name: pattern.slot } : null;
    case "rule":
      return { kind: "rule", name: pattern.rule };
    case "maybe": {
      const of = toPhrase(pattern.of, hasNames);
      return of === null ? { kind: "sequence", of: [] } : { kind: "optional", of };
    }
    case "any": {
      const of = pattern.of.flatMap((one) => toPhrase(one, hasNames) ?? []);
      return of.length === 0 ? null : { kind: "choice", of };
    }
    case "all": {
      const of = contracted(pattern.of).map((one) => (isPhrase(one) ? one : toPhrase(one, hasNames)));
      return of.includes(null) ? null : { kind: "sequence", of: of.flatMap((one) => one ?? []) };
    }
  }
}

const isPhrase = (one: Pattern | Phrase): one is Phrase => one.kind === "choice" || one.kind === "words";

/** Words side by side become one phrase, and those with a short form a choice of both. */
function contracted(of: readonly Pattern[]): readonly (Pattern | Phrase)[] {
  const out: (Pattern | Phrase)[] = [];
  for (let at = 0; at < of.length; at += 1) {
    const [first, second] = [of[at], of[at + 1]];
    if (first === undefined) continue;
    const pair = first.kind === "word" && second?.kind === "word" ? `${first.word} ${second.word}` : "";
    const short = contractedForms(pair);
    if (short === null) {
      out.push(first);
    } else {
      out.push({ kind: "choice", of: [pair, short].map((text) => ({ kind: "words", text })) });
      at += 1;
    }
  }
  return out;
}

/** The slots that a pattern names, one entry for each time. */
export function slotsOf(pattern: Pattern): readonly SlotName[] {
  switch (pattern.kind) {
    case "word":
    case "rule":
      return [];
    case "slot":
      return [pattern.slot];
    case "maybe":
      return slotsOf(pattern.of);
    case "any":
    case "all":
      return pattern.of.flatMap(slotsOf);
  }
}

/** How many different sentences a pattern stands for, a slot counting as one word; at most `most`. */
export function waysIn(pattern: Pattern, most = 1000): number {
  switch (pattern.kind) {
    case "word":
    case "slot":
    case "rule":
      return 1;
    case "maybe":
      return Math.min(most, 1 + waysIn(pattern.of, most));
    case "any":
      return Math.min(
        most,
        pattern.of.reduce((sum, one) => sum + waysIn(one, most), 0),
      );
    case "all":
      return Math.min(
        most,
        pattern.of.reduce((product, one) => product * waysIn(one, most), 1),
      );
  }
}
