import { err, ok, type Result } from "../units/result.ts";
import type { Grammar, Phrase } from "./grammar.ts";

/**
 * The rules a sentence can reach from the root, the root first, each once.
 * Fails with one sentence where a rule is missing or refers to itself, directly or in a circle:
 * the embedded recogniser would loop for ever on the second.
 */
export function reachableRules(
  grammar: Grammar,
): Result<readonly (readonly [name: string, phrase: Phrase])[], string> {
  const found = new Map<string, Phrase>();
  const open: string[] = [];
  const visit = (name: string): string | null => {
    if (open.includes(name))
      return `The rule "${name}" refers to itself: ${[...open, name].join(", ")}. Write it out.`;
    if (found.has(name)) return null;
    const phrase = grammar.rules.get(name);
    if (phrase === undefined) return `The grammar has no rule "${name}". Add it, or correct the name.`;
    found.set(name, phrase);
    open.push(name);
    for (const used of rulesUsed(phrase)) {
      const wrong = visit(used);
      if (wrong !== null) return wrong;
    }
    open.pop();
    return null;
  };
  const wrong = visit(grammar.root);
  return wrong === null ? ok([...found]) : err(wrong);
}

function rulesUsed(phrase: Phrase, used = new Set<string>()): ReadonlySet<string> {
  switch (phrase.kind) {
    case "words":
      return used;
    case "rule":
      return used.add(phrase.name);
    case "optional":
      return rulesUsed(phrase.of, used);
    case "sequence":
    case "choice":
      for (const part of phrase.of) rulesUsed(part, used);
      return used;
  }
}
