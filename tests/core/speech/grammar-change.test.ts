import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Grammar, Phrase } from "../../../core/speech/grammar.ts";
import { changedBy, changeOf, keepingRules, noGrammar } from "../../../core/speech/grammar-change.ts";

const words = (text: string): Phrase => ({ kind: "words", text });

const { phrase } = fc.letrec<{ phrase: Phrase; parts: Phrase[] }>((tie) => ({
  parts: fc.array(tie("phrase"), { maxLength: 2 }),
  phrase: fc.oneof(
    { maxDepth: 2 },
    fc.constantFrom(words("stir"), words("taste")),
    fc.constantFrom("food", "dish").map((name): Phrase => ({ kind: "rule", name })),
    tie("phrase").map((of): Phrase => ({ kind: "optional", of })),
    tie("parts").map((of): Phrase => ({ kind: "sequence", of })),
    tie("parts").map((of): Phrase => ({ kind: "choice", of })),
  ),
}));

const grammar = fc
  .dictionary(fc.constantFrom("food", "dish", "timer", "span"), phrase)
  .map((rules): Grammar => ({ root: "command", rules: new Map(Object.entries(rules)) }));

/** What a worker gets of it. */
const posted = <T>(message: T): T => structuredClone(message);

describe("a grammar that changes", () => {
  it("[V162] comes out of the changes as it went in, however often it changed", () => {
    fc.assert(
      fc.property(fc.array(grammar), (moments) => {
        let [mine, theirs] = [noGrammar, noGrammar];
        for (const moment of moments) {
          const now = keepingRules(mine, moment);
          theirs = changedBy(theirs, posted(changeOf(mine, now)));
          mine = now;
          expect([...theirs.rules]).toEqual([...moment.rules]);
          expect(theirs.root).toBe(moment.root);
        }
      }),
    );
  });

  it("[V162] only the rules that say something new are told, and nothing new is the very same grammar", () => {
    const of = (timer: string): Grammar => ({
      root: "command",
      rules: new Map([
        ["command", { kind: "optional", of: words("stop") }],
        ["timer", words(timer)],
      ]),
    });
    const rice = of("rice");
    expect(keepingRules(rice, of("rice"))).toBe(rice);
    expect(changeOf(rice, keepingRules(rice, of("bread")))).toEqual({
      root: "command",
      names: ["command", "timer"],
      changed: new Map([["timer", words("bread")]]),
    });
  });

  it("[V162] a rule that neither the change nor the grammar before has is an error", () => {
    expect(() => changedBy(noGrammar, { root: "a", names: ["a"], changed: new Map() })).toThrow(
      'the grammar\'s rule "a" is neither new nor known',
    );
  });
});
