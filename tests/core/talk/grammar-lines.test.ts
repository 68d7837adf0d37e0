import { describe, expect, it } from "vitest";
import { emptyLog } from "../../../core/cook/fold.ts";
import type { Phrase } from "../../../core/speech/grammar.ts";
import { grammarFor } from "../../../core/talk/grammar-for.ts";
import { namesOf, occasionsIn } from "../../../core/talk/listening.ts";
import type { Kitchen } from "../../../core/talk/model.ts";
import { readPattern, toPhrase } from "../../../core/talk/pattern.ts";
import { phrasebook } from "../../../core/talk/phrasebook.ts";
import { isValueSlot } from "../../../core/talk/value-slots.ts";
import { valueRules } from "../../../core/talk/value-rules.ts";
import { eveningMoments } from "../../voice/evening-moments.ts";
import { kitchenAt } from "./supper.ts";

/** The rules of the phrasebook's lines and of its figures at a moment, every one read and made anew. */
function plainRules(kitchen: Kitchen): Readonly<Record<string, Phrase>> {
  const [names, occasions] = [namesOf(kitchen), occasionsIn(kitchen)];
  const rules = new Map<string, readonly Phrase[]>();
  for (const { intent, occasion, says } of phrasebook) {
    const phrases = says.flatMap(
      (line) => toPhrase(readPattern(line), (slot) => isValueSlot(slot) || names[slot].length > 0) ?? [],
    );
    const before = rules.get(intent) ?? [];
    if (occasions.has(occasion) && phrases.length > 0) rules.set(intent, [...before, ...phrases]);
  }
  const lines = [...rules].map(([name, of]): [string, Phrase] => [name, { kind: "choice", of }]);
  const figures = [...valueRules].flatMap(([name, pattern]): [string, Phrase][] => {
    const phrase = toPhrase(pattern, () => true);
    return phrase === null ? [] : [[name, phrase]];
  });
  return Object.fromEntries([...lines, ...figures]);
}

describe("the grammar of a moment", () => {
  it("[V161] has the phrasebook's lines as they are made anew, with a meal, without one, and back again", async () => {
    const { busy, which, served, shopping } = await eveningMoments();
    for (const kitchen of [kitchenAt(emptyLog, 0), busy, which, served, shopping, kitchenAt(emptyLog, 0)])
      expect(Object.fromEntries(grammarFor(kitchen).rules)).toMatchObject(plainRules(kitchen));
  });
});
