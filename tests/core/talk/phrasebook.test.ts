import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Phrase } from "../../../core/speech/grammar.ts";
import { reachableRules } from "../../../core/speech/check-grammar.ts";
import { timerId } from "../../../core/cook/orders.ts";
import { taskId } from "../../../core/plan/model.ts";
import { grammarFor } from "../../../core/talk/grammar-for.ts";
import type { IntentType } from "../../../core/talk/intent.ts";
import type { Kitchen } from "../../../core/talk/model.ts";
import { readPattern, waysIn } from "../../../core/talk/pattern.ts";
import { phrasebook } from "../../../core/talk/phrasebook.ts";
import { understand } from "../../../core/talk/understand.ts";
import { minutes } from "../../../core/units/quantity.ts";
import { evening, kitchenAt } from "./supper.ts";

const cooking = evening(
  [6, { type: "FinishTask", task: taskId("lantern-stew/halve") }],
  [7, { type: "StartTask", task: taskId("lantern-stew/roast") }],
  [8, { type: "StartTimer", timer: timerId("t"), name: "flatbreads", span: { low: minutes(12), high: minutes(12) }, dish: null }],
);
const calm = kitchenAt(cooking, 10);
const ringing = kitchenAt(cooking, 21);
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
const corrected = kitchenAt(cooking, 10, {
  correctable: { utteranceId: "u0", intent: { type: "StartTimer", span: { low: minutes(50), high: minutes(50) }, name: null } },
});

/** One sentence of a rule, its choices made by `pick(n)`, a number from 0 to n - 1. */
function sentence(phrase: Phrase, rules: ReadonlyMap<string, Phrase>, pick: (count: number) => number): string {
  switch (phrase.kind) {
    case "words":
      return phrase.text;
    case "optional":
      return pick(2) === 0 ? "" : sentence(phrase.of, rules, pick);
    case "sequence":
      return phrase.of.map((part) => sentence(part, rules, pick)).filter((text) => text !== "").join(" ");
    case "choice": {
      const chosen = phrase.of[pick(phrase.of.length)];
      if (chosen === undefined) throw new Error("an empty choice can never be said");
      return sentence(chosen, rules, pick);
    }
    case "rule": {
      const rule = rules.get(phrase.name);
      if (rule === undefined) throw new Error(`no rule ${phrase.name}`);
      return sentence(rule, rules, pick);
    }
  }
}

function intentRules(kitchen: Kitchen): readonly string[] {
  const types = new Set<string>(phrasebook.map(({ intent }) => intent));
  return [...grammarFor(kitchen).rules.keys()].filter((name) => types.has(name));
}

describe("the phrasebook", () => {
  it("[C1] has at least six ways of saying each intent", () => {
    const ways = new Map<IntentType, number>();
    for (const { intent, says } of phrasebook) {
      ways.set(intent, (ways.get(intent) ?? 0) + says.reduce((sum, line) => sum + waysIn(readPattern(line)), 0));
    }
    expect([...ways].filter(([, count]) => count < 6)).toEqual([]);
  });

  for (const [name, kitchen] of Object.entries({ calm, ringing, asked, corrected })) {
    it(`[C2] every sentence the recogniser can hear is understood as the intent it came from (${name})`, () => {
      const { rules } = grammarFor(kitchen);
      for (const intent of intentRules(kitchen)) {
        const rule = rules.get(intent);
        if (rule === undefined) throw new Error(`no rule ${intent}`);
        fc.assert(
          fc.property(fc.infiniteStream(fc.nat(999)), (numbers) => {
            const pick = (count: number): number => (numbers.next().value ?? 0) % count;
            const said = sentence(rule, rules, pick);
            expect([said, understand(said, kitchen).intent?.type]).toEqual([said, intent]);
          }),
          { numRuns: 60, seed: 7 },
        );
      }
    });
  }

  it("[C3] its grammar has no missing and no circular rule, and the whole of it can be reached", () => {
    for (const kitchen of [calm, ringing, asked, corrected]) {
      const grammar = grammarFor(kitchen);
      expect(reachableRules(grammar).ok).toBe(true);
    }
  });
});
