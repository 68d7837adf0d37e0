import type { Grammar, Phrase } from "./grammar.ts";

/** What of a grammar is new to somebody who has the one before: all its rules by name, in order, and those that changed. */
export type GrammarChange = {
  readonly root: string;
  readonly names: readonly string[];
  readonly changed: ReadonlyMap<string, Phrase>;
};

/** No rules: what everybody has at first. */
export const noGrammar: Grammar = { root: "nothing", rules: new Map() };

/**
 * A grammar with every rule that says the same as before as the very object that it was, and the whole one before where
 * nothing is new: so what is new is told by looking at the objects alone.
 */
export function keepingRules(before: Grammar, now: Grammar): Grammar {
  let isSame = before.root === now.root && before.rules.size === now.rules.size;
  const rules = new Map<string, Phrase>();
  for (const [name, phrase] of now.rules) {
    const old = before.rules.get(name);
    const kept = old !== undefined && isSamePhrase(old, phrase) ? old : phrase;
    isSame &&= kept === old;
    rules.set(name, kept);
  }
  return isSame ? before : { root: now.root, rules };
}

/** From one grammar to the next: a rule is new where it is another object. */
export function changeOf(before: Grammar, { root, rules }: Grammar): GrammarChange {
  const changed = [...rules].filter(([name, phrase]) => before.rules.get(name) !== phrase);
  return { root, names: [...rules.keys()], changed: new Map(changed) };
}

/** The next grammar, made of the one before and the change. Throws where a rule is in neither: they belong together. */
export function changedBy(before: Grammar, { root, names, changed }: GrammarChange): Grammar {
  const rules = names.map((name) => {
    const phrase = changed.get(name) ?? before.rules.get(name);
    if (phrase === undefined) throw new Error(`the grammar's rule "${name}" is neither new nor known`);
    return [name, phrase] as const;
  });
  return { root, rules: new Map(rules) };
}

function isSamePhrase(one: Phrase, other: Phrase): boolean {
  if (one === other) return true;
  switch (one.kind) {
    case "words":
      return other.kind === "words" && one.text === other.text;
    case "rule":
      return other.kind === "rule" && one.name === other.name;
    case "optional":
      return other.kind === "optional" && isSamePhrase(one.of, other.of);
    case "sequence":
      return other.kind === "sequence" && areSame(one.of, other.of);
    case "choice":
      return other.kind === "choice" && areSame(one.of, other.of);
  }
}

const areSame = (some: readonly Phrase[], others: readonly Phrase[]): boolean =>
  some.length === others.length &&
  some.every((one, at) => {
    const other = others[at];
    return other !== undefined && isSamePhrase(one, other);
  });
