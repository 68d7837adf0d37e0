import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { toAutomaton } from "../../../../core/speech/automaton.ts";
import type { Grammar, Phrase } from "../../../../core/speech/grammar.ts";
import { createSpeller } from "../../../../core/speech/transcribe/speller.ts";
import { type Place, WordPaths } from "../../../../core/speech/transcribe/word-paths.ts";
import { fakeTokens } from "../../../voice/fake-transcriber.ts";
import { allows, grammarOf, listenTo } from "../../../voice/grammars.ts";

const speller = createSpeller(fakeTokens);

const pathsOf = (grammar: Grammar): WordPaths => {
  const automaton = toAutomaton(listenTo(grammar));
  if (!automaton.ok) throw new Error(automaton.error);
  return new WordPaths(automaton.value, speller);
};

/** A text in tokens, a space before it as models write. */
function tokensOf(text: string): readonly number[] {
  const tokens = speller.spell(`▁${text.replaceAll(" ", "▁")}`);
  if (tokens === null) throw new Error(`nothing spells "${text}"`);
  return tokens;
}

/** The sentences that a text may be, by following its tokens. */
function read(paths: WordPaths, text: string): readonly string[] {
  type Draft = { readonly place: Place; readonly said: readonly string[] };
  let drafts: readonly Draft[] = [{ place: paths.start(), said: [] }];
  for (const token of tokensOf(text))
    drafts = drafts.flatMap(({ place, said }) =>
      paths
        .movesFrom(place)
        .filter((move) => move.token === token)
        .map((move) => ({ place: move.to, said: [...said, ...move.said] })),
    );
  const found = drafts.flatMap(({ place, said }) =>
    paths.endings(place).map((words) => [...said, ...words].join(" ")),
  );
  return [...new Set(found)].sort();
}

const vocabulary = [
  "okay",
  "jalapeño",
  "step",
  "kitchen",
  "k",
  "za'atar",
  "one",
  "five",
  "fifteen",
  "twenty",
  "and",
];
const digits: Readonly<Record<string, string>> = { one: "1", five: "5" };

/** Every way to write words, by the plainest rule there is; "_" is a space inside a word, which stays one. */
function written(words: readonly string[]): readonly string[] {
  const [first] = words;
  if (first === undefined) return [""];
  const begin = (form: string, rest: readonly string[]): readonly string[] =>
    written(rest).map((after) => (after === "" ? form : `${form} ${after}`));
  const ways = [...begin(first, words.slice(1))];
  if (first === "okay") ways.push(...begin("ok", words.slice(1)), ...begin("o_k", words.slice(1)));
  if (first === "jalapeño") ways.push(...begin("jalapeno", words.slice(1)));
  if (first === "fifteen") ways.push(...begin("15", words.slice(1)));
  if (first === "twenty") {
    const ones = digits[words[1] ?? ""];
    ways.push(...begin("20", words.slice(1)));
    if (ones !== undefined) ways.push(...begin(`2${ones}`, words.slice(2)));
  }
  for (let count = 1; count <= 6 && digits[words[count - 1] ?? ""] !== undefined; count++) {
    const figure = words.slice(0, count).map((word) => digits[word] ?? "");
    ways.push(...begin(figure.join(""), words.slice(count)));
  }
  return ways;
}

const phrase = fc.letrec<{ phrase: Phrase }>((tie) => ({
  phrase: fc.oneof(
    { depthSize: "small", withCrossShrink: true },
    fc.constantFrom(...vocabulary).map((text): Phrase => ({ kind: "words", text })),
    fc.array(tie("phrase"), { minLength: 1, maxLength: 3 }).map((of): Phrase => ({ kind: "sequence", of })),
    fc.array(tie("phrase"), { minLength: 1, maxLength: 3 }).map((of): Phrase => ({ kind: "choice", of })),
    tie("phrase").map((of): Phrase => ({ kind: "optional", of })),
  ),
})).phrase;

const grammars = phrase.map((root): Grammar => ({ root: "root", rules: new Map([["root", root]]) }));

/** Sentences of a phrase, at most a few. */
function sentencesOf(part: Phrase): readonly string[] {
  switch (part.kind) {
    case "words":
      return [part.text];
    case "optional":
      return ["", ...sentencesOf(part.of)].slice(0, 12);
    case "choice":
      return part.of.flatMap((each) => sentencesOf(each)).slice(0, 12);
    case "sequence":
      return part.of.reduce<readonly string[]>(
        (before, each) =>
          before.flatMap((begun) => sentencesOf(each).map((more) => `${begun} ${more}`.trim())).slice(0, 12),
        [""],
      );
    case "rule":
      return [];
  }
}

const gaps = fc.constantFrom(" ", ", ", "-", ". ", "? ");

const plainly = (words: readonly string[]): readonly string[] =>
  written(words).map((text) => text.replaceAll("_", " "));

/** A written sentence with marks and hyphens between its words, and capitals where the tokens have them. */
const dressed = (text: string): fc.Arbitrary<string> =>
  fc
    .tuple(fc.array(gaps, { minLength: 9, maxLength: 9 }), fc.constantFrom("", ".", "?"))
    .map(([between, after]) => {
      const words = text.split(" ").map((word) => word.replace(/^k/, "K").replace("_", " "));
      return words.map((word, at) => (at === 0 ? "" : (between[at % 9] ?? " ")) + word).join("") + after;
    });

describe("the paths of a grammar's words", () => {
  const grammar = grammarOf("okay kitchen", "step fifteen", "step twenty five", "three hundred and fifty");

  it.each([
    ["okay kitchen", ["okay kitchen"]],
    ["Kitchen", []],
    ["ok, Kitchen.", ["okay kitchen"]],
    ["o k kitchen?", ["okay kitchen"]],
    ["step 15", ["step fifteen"]],
    ["step twenty-five", ["step twenty five"]],
    ["step 25.", ["step twenty five"]],
    ["step 2", []],
    ["step 5", []],
    ["step 155", []],
    ["okaykitchen", []],
    ["step", []],
    ["350", ["three hundred and fifty"]],
    ["three 50", []],
    ["", []],
  ])("[V51] %j is read as %j", (text, sentences) => {
    expect(read(pathsOf(grammar), text)).toEqual(sentences);
  });

  it("[V51] every sentence can be spelt, with any capitals, marks, hyphens and digits", () => {
    const asked = grammars.chain((each) => {
      const root = each.rules.get("root");
      const sentences = root === undefined ? [] : sentencesOf(root).filter((text) => text !== "");
      return sentences.length === 0
        ? fc.constant(null)
        : fc
            .constantFrom(...sentences)
            .chain((sentence) =>
              fc.tuple(fc.constant(sentence), fc.constantFrom(...written(sentence.split(" ")))),
            )
            .chain(([sentence, text]) =>
              fc.record({
                grammar: fc.constant(each),
                sentence: fc.constant(sentence),
                text: dressed(text),
              }),
            );
    });
    fc.assert(
      fc.property(asked, (each) => {
        if (each !== null) expect(read(pathsOf(each.grammar), each.text)).toContain(each.sentence);
      }),
      { numRuns: 200, seed: 5 },
    );
  });

  it("[V51] whatever can be spelt is a sentence of the grammar, written in one of its ways", () => {
    fc.assert(
      fc.property(grammars, fc.array(fc.nat(), { minLength: 30, maxLength: 30 }), (each, choices) => {
        const paths = pathsOf(each);
        let place = paths.start();
        let said: readonly string[] = [];
        let text = "";
        for (const choice of choices) {
          for (const words of paths.endings(place)) {
            const sentence = [...said, ...words];
            const plain = text
              .toLowerCase()
              .replaceAll(/[▁,.?-]+/g, " ")
              .trim();
            expect(allows(each, sentence.join(" "))).toBe(true);
            expect(plainly(sentence)).toContain(plain);
          }
          const moves = paths.movesFrom(place);
          const move = moves[choice % Math.max(1, moves.length)];
          if (move === undefined) break;
          text += fakeTokens.texts[move.token] ?? "";
          said = [...said, ...move.said];
          place = move.to;
        }
      }),
      { numRuns: 300, seed: 7 },
    );
  });

  it("[V51] a sentence of another grammar is spelt only where both have it", () => {
    fc.assert(
      fc.property(grammars, grammars, (own, other) => {
        const root = other.rules.get("root");
        const paths = pathsOf(own);
        for (const sentence of root === undefined ? [] : sentencesOf(root).filter((text) => text !== "")) {
          expect(read(paths, sentence).includes(sentence)).toBe(allows(own, sentence));
          for (const as of read(paths, sentence)) expect(plainly(as.split(" "))).toContain(sentence);
        }
      }),
      { numRuns: 200, seed: 9 },
    );
  });
});
