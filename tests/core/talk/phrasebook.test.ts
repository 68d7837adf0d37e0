import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Phrase } from "../../../core/speech/grammar.ts";
import { reachableRules } from "../../../core/speech/check-grammar.ts";
import { toAutomaton } from "../../../core/speech/automaton.ts";
import { vocabulary } from "../../../core/speech/vocabulary.ts";
import { timerId } from "../../../core/cook/orders.ts";
import { emptyLog } from "../../../core/cook/fold.ts";
import type { MealLog } from "../../../core/cook/session.ts";
import { taskId } from "../../../core/plan/model.ts";
import { grammarFor } from "../../../core/talk/grammar-for.ts";
import { heardWhileSaying } from "../../../core/talk/heard-while-saying.ts";
import type { IntentType } from "../../../core/talk/intent.ts";
import { momentOf } from "../../../core/talk/listening.ts";
import type { Kitchen } from "../../../core/talk/model.ts";
import type { Pattern } from "../../../core/talk/pattern.ts";
import { readPattern, waysIn } from "../../../core/talk/pattern.ts";
import { phrasebook } from "../../../core/talk/phrasebook.ts";
import type { PhraseEntry } from "../../../core/talk/phrase-entry.ts";
import type { SlotName, Slots } from "../../../core/talk/slots.ts";
import { noSlots } from "../../../core/talk/slots.ts";
import { understand } from "../../../core/talk/understand.ts";
import { nameWords, wordsOf } from "../../../core/talk/utterance.ts";
import { isValueSlot, valueReaders } from "../../../core/talk/value-slots.ts";
import { minutes } from "../../../core/units/quantity.ts";
import { foodsWith, lantern } from "./foods-at-hand.ts";
import type { HouseLog } from "../../../core/house/house.ts";
import type { HouseOrder } from "../../../core/house/orders.ts";
import { afterSupper, give as giveHouse, servings, store } from "../house/house-at.ts";
import { marketList } from "../shop/market-list.ts";
import { evening, give, kitchenAt } from "./supper.ts";
import { listenTo } from "../../voice/grammars.ts";
import { isInGrammar } from "../../voice/judge-heard.ts";

const cooking = evening(
  [6, { type: "FinishTask", task: taskId("lantern-stew/halve") }],
  [7, { type: "StartTask", task: taskId("lantern-stew/roast") }],
  [
    8,
    {
      type: "StartTimer",
      timer: timerId("t"),
      name: "flatbreads",
      span: { low: minutes(12), high: minutes(12) },
      dish: null,
    },
  ],
);
const foods = foodsWith(lantern);
const calm = { ...kitchenAt(cooking, 10), foods };
const ringing = { ...kitchenAt(cooking, 21), foods };
const asked = kitchenAt(cooking, 10, {
  question: {
    kind: "which",
    prompt: "Which one?",
    candidates: [
      { name: "red onion", intent: { type: "WhatNow" } },
      { name: "green onion", intent: { type: "WhatNext" } },
    ],
  },
});
const householdOf = ({ household }: Kitchen) => {
  if (household === null) throw new Error("no household");
  return household;
};
const fridge = afterSupper([130, store("soup", servings(2))]);
const fifty = { low: minutes(50), high: minutes(50) };
const corrected = kitchenAt(cooking, 10, {
  correctable: { utteranceId: "u0", intent: { type: "StartTimer", span: fifty, name: null } },
});

/** Somebody looks at a list, with things on it that no meal takes. */
const shopping: Kitchen = {
  ...calm,
  household: {
    ...householdOf(calm),
    list: { ...marketList, isOpen: true },
    log: [
      { type: "WantThing", name: "kitchen paper" },
      { type: "WantThing", name: "lemons" },
    ].reduce<HouseLog>((log, order) => giveHouse(log, 9, order as HouseOrder), householdOf(calm).log),
  },
};

const stored: Kitchen = { ...calm, household: { ...householdOf(calm), log: fridge } };

type Pick = (count: number) => number;

/** One sentence of a rule, its choices made by `pick(n)`, a number from 0 to n - 1. */
function sentence(phrase: Phrase, rules: ReadonlyMap<string, Phrase>, pick: Pick): string {
  switch (phrase.kind) {
    case "words":
      return phrase.text;
    case "optional":
      return pick(2) === 0 ? "" : sentence(phrase.of, rules, pick);
    case "sequence":
      return phrase.of
        .map((part) => sentence(part, rules, pick))
        .filter((text) => text !== "")
        .join(" ");
    case "choice": {
      const chosen = phrase.of[pick(phrase.of.length)];
      if (chosen === undefined) throw new Error("an empty choice can never be said");
      return sentence(chosen, rules, pick);
    }
    case "rule":
      return sentence(ruleOf(rules, phrase.name), rules, pick);
  }
}

function ruleOf(rules: ReadonlyMap<string, Phrase>, name: string): Phrase {
  const rule = rules.get(name);
  if (rule === undefined) throw new Error(`no rule ${name}`);
  return rule;
}

/** What a slot holds when `text` was said for it, read by itself. */
function slotValue(slot: SlotName, text: string, kitchen: Kitchen): unknown {
  if (isValueSlot(slot)) return valueReaders[slot](wordsOf(text), 0, momentOf(kitchen))?.value;
  const name = nameWords(text).join(" ");
  if (slot !== "pick") return name;
  const known = ["red onion", "green onion", "first", "second", "third", "fourth", "fifth"].indexOf(name);
  return name === "last" ? 1 : known % 2 === known || known < 2 ? known : known - 2;
}

/** A sentence of a phrasebook line, and the slots it fills. */
function lineSentence(
  pattern: Pattern,
  rules: ReadonlyMap<string, Phrase>,
  pick: Pick,
  kitchen: Kitchen,
): readonly [string, Partial<Slots>] {
  switch (pattern.kind) {
    case "word":
      return [pattern.word, {}];
    case "rule":
      throw new Error("a line names no rule");
    case "slot": {
      const text = sentence(ruleOf(rules, pattern.slot), rules, pick);
      return [text, { [pattern.slot]: slotValue(pattern.slot, text, kitchen) }];
    }
    case "maybe":
      return pick(2) === 0 ? ["", {}] : lineSentence(pattern.of, rules, pick, kitchen);
    case "any": {
      const chosen = pattern.of[pick(pattern.of.length)];
      return chosen === undefined ? ["", {}] : lineSentence(chosen, rules, pick, kitchen);
    }
    case "all": {
      const parts = pattern.of.map((part) => lineSentence(part, rules, pick, kitchen));
      const text = parts
        .map(([said]) => said)
        .filter((said) => said !== "")
        .join(" ");
      return [text, Object.assign({}, ...parts.map(([, slots]) => slots)) as Partial<Slots>];
    }
  }
}

const pickerOf =
  (numbers: fc.Stream<number>): Pick =>
  (count) =>
    (numbers.next().value ?? 0) % count;

function momentFor(entry: PhraseEntry): Kitchen {
  if (entry.occasion === "question") return asked;
  if (entry.occasion === "listed" || entry.occasion === "shopping") return shopping;
  return entry.occasion === "corrected" ? corrected : entry.occasion === "ringing" ? ringing : calm;
}

describe("the phrasebook", () => {
  it("[C1] has at least six ways of saying each intent", () => {
    const ways = new Map<IntentType, number>();
    for (const { intent, says } of phrasebook) {
      ways.set(
        intent,
        (ways.get(intent) ?? 0) + says.reduce((sum, line) => sum + waysIn(readPattern(line)), 0),
      );
    }
    expect([...ways].filter(([, count]) => count < 6)).toEqual([]);
  });

  for (const [name, kitchen] of Object.entries({ calm, ringing, asked, corrected, stored, shopping })) {
    it(`[C2] every sentence the recogniser can hear is understood as the intent it came from (${name})`, () => {
      const { rules } = grammarFor(kitchen);
      const types = new Set<string>(phrasebook.map(({ intent }) => intent));
      for (const [intent, rule] of rules) {
        if (!types.has(intent)) continue;
        fc.assert(
          fc.property(fc.infiniteStream(fc.nat(999)), (numbers) => {
            const said = sentence(rule, rules, pickerOf(numbers));
            expect([said, understand(said, kitchen).intent?.type]).toEqual([said, intent]);
          }),
          { numRuns: 25, seed: 7 },
        );
      }
    });
  }

  it("[C3] every line, heard or typed, is understood with the very slots that were put into it", () => {
    for (const entry of phrasebook) {
      const kitchen = momentFor(entry);
      const { rules } = grammarFor(kitchen);
      for (const line of [...entry.says, ...entry.typed]) {
        const pattern = readPattern(line);
        fc.assert(
          fc.property(fc.infiniteStream(fc.nat(999)), (numbers) => {
            const [said, slots] = lineSentence(pattern, rules, pickerOf(numbers), kitchen);
            const intent = entry.make({ ...noSlots, ...slots });
            expect([said, understand(said, kitchen).intent]).toEqual([said, intent]);
          }),
          { numRuns: 4, seed: 11 },
        );
      }
    }
  });

  it("[C4] makes a grammar without a missing or circular rule that the embedded recogniser's format can hold", () => {
    for (const kitchen of [calm, ringing, asked, corrected, kitchenAt(emptyLog, 0)]) {
      const grammar = grammarFor(kitchen);
      expect(reachableRules(grammar).ok).toBe(true);
      expect(toAutomaton(listenTo(grammar, { address: "listen kitchen", mode: "addressed" })).ok).toBe(true);
    }
  });

  it("[C5] listens for answers and candidates only while a question is open, for corrections only after a deed", () => {
    const heard = (kitchen: Kitchen) => [...grammarFor(kitchen).rules.keys()];
    expect(heard(calm)).not.toContain("Yes");
    expect(heard(calm)).not.toContain("Correct");
    expect(heard(asked)).toEqual(expect.arrayContaining(["Yes", "No", "Pick"]));
    expect(heard(corrected)).toContain("Correct");
    expect(heard(calm)).not.toContain("HearRing");
    expect(heard(ringing)).toContain("HearRing");
  });

  it("[C6] names only what this meal has: no dish, step or food without a meal", () => {
    const words = vocabulary(listenTo(grammarFor(kitchenAt(emptyLog, 0))));
    expect(["flatbreads", "lentils", "garlic", "squash"].filter((word) => words.has(word))).toEqual([]);
    const cookingWords = vocabulary(listenTo(grammarFor(calm)));
    expect(["flatbreads", "lentils", "garlic", "squash"].filter((word) => !cookingWords.has(word))).toEqual(
      [],
    );
  });

  it("[C8] listens for a deed only where something on the fire or in hand asks for it", () => {
    const chopped = evening([1, { type: "FinishTask", task: taskId("lantern-stew/chop") }]);
    const simmering = give(chopped, 4, { type: "StartTask", task: taskId("lantern-stew/simmer") });
    const heard = (log: MealLog) => {
      const deed = grammarFor(kitchenAt(log, 6)).rules.get("deed");
      return deed?.kind === "choice" ? deed.of.map((each) => (each.kind === "words" ? each.text : "")) : [];
    };
    expect(heard(chopped)).toEqual(["checked", "tasted", "seen to"]);
    expect(heard(simmering)).toEqual(["stirred", "checked", "tasted", "seen to"]);
    expect(understand("turned", kitchenAt(chopped, 6)).intent?.type).toBe("Attended");
  });

  it('[C8] listens for "started" only where a step is in hand, or one that runs by itself waits for it', () => {
    const isHeard = (log: MealLog) => isInGrammar("i have started", grammarFor(kitchenAt(log, 6)));
    const finish = (task: string) => ({ type: "FinishTask", task: taskId(task) }) as const;
    const start = (task: string) => ({ type: "StartTask", task: taskId(task) }) as const;
    const prepared = evening(
      [1, finish("lantern-stew/halve")],
      [2, finish("lantern-stew/chop")],
      [3, finish("griddle-breads/mix")],
      [4, start("lantern-stew/roast")],
      [4, start("lantern-stew/simmer")],
    );
    expect(isHeard(evening()), "the squash is in hand").toBe(true);
    expect(isHeard(prepared), "the dough waits for its rest").toBe(true);
    expect(isHeard(give(prepared, 5, start("griddle-breads/rest")))).toBe(false);
  });

  it("[C7] keeps what is heard while the caller speaks to a handful, and to no word that it says itself", () => {
    const saying = (text: string) => heardWhileSaying(text, "listen kitchen");
    expect(saying("Mix the dough.")).toEqual({
      stopSentences: ["stop", "stop talking", "wait", "quiet", "be quiet", "hush"],
      address: "listen kitchen",
    });
    expect(saying("Quiet for ten minutes.").stopSentences).toEqual(["stop", "stop talking", "wait", "hush"]);
    expect(saying('Say "listen kitchen, what now".').address).toBeNull();
    expect(heardWhileSaying("Mix the dough.", null).address).toBeNull();
    for (const said of saying("").stopSentences) {
      const intent = understand(said, calm).intent?.type;
      // "Wait" may also put everything on hold: either way the voice stops.
      expect(["StopTalking", "HoldEverything"]).toContain(intent);
    }
  });
});
