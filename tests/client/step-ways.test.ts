import { describe, expect, it } from "vitest";
import type { Task } from "../../core/plan/model.ts";
import { respondTo } from "../../core/talk/respond-to.ts";
import { wayReason } from "../../core/plan/way-words.ts";
import { stepDeeds } from "../../client/ui/parts/step-deeds.ts";
import { cookThePatties, pattiesEvening } from "../core/cook/patties-evening.ts";
import { sessionOf } from "../core/cook/supper.ts";
import { give, kitchenAt } from "../core/talk/supper.ts";

const begun = pattiesEvening();
const task = (id: string, log = begun): Task => {
  const found = sessionOf(log).tasks.find((one) => one.id === id);
  if (found === undefined) throw new Error(`there is no ${id}`);
  return found;
};
const waiting = { state: "waiting" } as const;

describe("a step with several ways, touched", () => {
  it("[W90] a waiting step has a key for each other way, and its touch takes that way", () => {
    const keys = stepDeeds(task("patties/cook"), waiting);
    expect(keys.map(({ label }) => label)).toEqual([
      "Do this now",
      "It's going",
      "In a pan instead",
      "On the grill instead",
      "Leave it out",
    ]);
    const key = keys.find(({ label }) => label === "In a pan instead");
    if (key === undefined) throw new Error("there is no key for the pan");
    expect(respondTo(key.intent, key.words, kitchenAt(begun, 1)).orders).toEqual([
      cookThePatties("in a pan"),
    ]);
  });

  it("[W90] any batch of it will do; a step that runs, or has one way, has no such key", () => {
    const log = give(begun, 1, cookThePatties("in a pan"));
    const [key] = stepDeeds(task("patties/cook#2", log), waiting).filter(({ label }) =>
      label.startsWith("In the"),
    );
    expect(key === undefined ? [] : respondTo(key.intent, key.words, kitchenAt(log, 2)).orders).toEqual([
      cookThePatties("in the oven"),
    ]);
    expect(stepDeeds(task("salad/wash"), waiting).map(({ label }) => label)).toEqual([
      "Do this now",
      "It's done",
      "Leave it out",
    ]);
    const running = {
      state: "running",
      startedAt: sessionOf(begun).begunAt,
      span: task("patties/cook").step.time,
    } as const;
    expect(stepDeeds(task("patties/cook"), running).map(({ label }) => label)).toEqual([
      "It's done",
      "Leave it out",
    ]);
  });

  it("[W91] the reason that a picked step shows is that of the plan", () => {
    const shown = (id: string): string => wayReason(task(id).step) ?? "";
    expect(shown("patties/cook")).toMatch(/Cook in the oven: all six patties go in at once/);
    expect(shown("patties/shape")).toBe("");
  });
});
