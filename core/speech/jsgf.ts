import { err, ok, type Result } from "../units/result.ts";
import { chatterWords } from "./chatter.ts";
import { reachableRules } from "./check-grammar.ts";
import type { Grammar, Phrase } from "./grammar.ts";
import { spokenWords } from "./spoken-words.ts";

/**
 * How much of a sentence must be there before it counts.
 * - addressed: only after the address ("okay kitchen, next step").
 * - open: with or without the address.
 * - stop-only: as open, for the few words that are heard while the caller itself speaks.
 */
export type ListeningMode = "addressed" | "open" | "stop-only";

/** What to do with speech that is no command: let the chatter loop take it, or force it into the grammar. */
export type Chatter = "absorb" | "force";

/** How a grammar is to be listened for. */
export type JsgfOptions = {
  /** The words of the address ("okay kitchen"), or null where there is none. */
  readonly address: string | null;
  readonly mode: ListeningMode;
  readonly chatter: Chatter;
};

/** How much likelier a sentence is than chatter beforehand; more accepted no more chatter as commands in our measurements. */
const sentenceWeight = 1000;

/**
 * Writes the grammar in JSGF, the Java Speech Grammar Format 1.0 (W3C Note, 5 June 2000), with one public
 * rule <top>. Rules are renamed r0, r1, ... because ours may be named anything; unreachable ones are left out.
 * Fails with one sentence for a missing or circular rule, or for a mode that needs an address without one.
 */
export function toJsgf(grammar: Grammar, options: JsgfOptions): Result<string, string> {
  const rules = reachableRules(grammar);
  if (!rules.ok) return rules;
  const address = options.address === null ? [] : spokenWords(options.address);
  if (options.mode === "addressed" && address.length === 0) {
    return err("Listening for the address needs one: choose two words to call the kitchen by.");
  }
  const names = new Map(rules.value.map(([name], at) => [name, `r${at}`]));
  const written = rules.value.map(
    ([name, phrase]) => `<${ruleName(names, name)}> = ${expansion(phrase, names)};`,
  );
  const top = topAlternatives(options, address.length > 0).join(" | ");
  return ok(
    [
      "#JSGF V1.0 UTF-8 en;",
      "grammar kitchen;",
      `public <top> = ${top};`,
      ...(address.length > 0 ? [`<address> = ${address.join(" ")};`] : []),
      ...written,
      ...(options.chatter === "absorb" ? chatterRules() : []),
      "",
    ].join("\n"),
  );
}

function topAlternatives(options: JsgfOptions, hasAddress: boolean): readonly string[] {
  const sentence = !hasAddress
    ? "<r0>"
    : options.mode === "addressed"
      ? "<address> <r0>"
      : "[ <address> ] <r0>";
  const others = [
    ...(hasAddress ? ["<address>"] : []),
    ...(options.chatter === "absorb" ? ["<chatter>"] : []),
  ];
  return others.length === 0
    ? [sentence]
    : [`/${sentenceWeight}/ ${sentence}`, ...others.map((other) => `/1/ ${other}`)];
}

function chatterRules(): readonly string[] {
  // A rule that ends in itself is the one recursion the format allows without a star.
  return [
    "<chatter> = <sound> <chatter> | <sound>;",
    `<sound> = ${chatterWords.map(({ word }) => word).join(" | ")};`,
  ];
}

function expansion(phrase: Phrase, names: ReadonlyMap<string, string>): string {
  switch (phrase.kind) {
    case "words": {
      const words = spokenWords(phrase.text);
      return words.length === 0 ? "<NULL>" : words.join(" ");
    }
    case "rule":
      return `<${ruleName(names, phrase.name)}>`;
    case "optional":
      return `[ ${expansion(phrase.of, names)} ]`;
    case "sequence":
      return phrase.of.length === 0
        ? "<NULL>"
        : phrase.of.map((part) => `( ${expansion(part, names)} )`).join(" ");
    case "choice":
      return phrase.of.length === 0
        ? "<VOID>"
        : `( ${phrase.of.map((part) => expansion(part, names)).join(" | ")} )`;
  }
}

function ruleName(names: ReadonlyMap<string, string>, name: string): string {
  const written = names.get(name);
  if (written === undefined) throw new Error(`the rule "${name}" was not among the reachable ones`);
  return written;
}
