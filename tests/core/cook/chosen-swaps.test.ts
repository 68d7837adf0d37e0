import { describe, expect, it } from "vitest";
import { swapsChosen, withChosenSwaps } from "../../../core/cook/chosen-swaps.ts";
import { decide, numbered } from "../../../core/cook/decide.ts";
import { appendEvents, emptyLog } from "../../../core/cook/fold.ts";
import type { Command } from "../../../core/cook/orders.ts";
import { instant } from "../../../core/units/quantity.ts";
import { supper } from "../talk/supper.ts";

const lemon = { dish: "lantern-stew", ingredient: "lemon", use: "cider vinegar" } as const;
const begun = (swaps: Extract<Command["order"], { type: "BeginMeal" }>["swaps"]) => {
  const order = { type: "BeginMeal", meal: supper, serveAt: null, ...(swaps && { swaps }) } as const;
  const command: Command = { id: "begin", at: instant(0), order };
  const decided = decide(command, emptyLog);
  if (!decided.ok) throw new Error(decided.error.code);
  return appendEvents(emptyLog, numbered(command, emptyLog, decided.value));
};

describe("what is chosen before a meal begins", () => {
  it("[D32] is found by its name in the meal's own swaps, and makes the meal that the same swap would make in it", () => {
    const used = swapsChosen(supper, [lemon]);
    expect(used).toEqual({ ok: true, value: [{ dish: "lantern-stew", ingredient: "lemon", swap: 1 }] });
    const made = withChosenSwaps(supper, [lemon]);
    const { session, events } = begun(used.ok ? used.value : []);
    expect(made.ok && made.value).toEqual(session?.meal);
    expect(session?.swaps).toEqual(used.ok && used.value);
    expect(events.map(({ happening }) => happening.type)).toEqual(["MealBegun", "SwapUsed", "TaskCalled"]);
    expect(withChosenSwaps(supper, [])).toEqual({ ok: true, value: supper });
  });

  it.each([
    [{ ...lemon, use: "sea water" }, "offers no sea water any more"],
    [{ ...lemon, dish: "porridge" }, "offers no cider vinegar any more"],
    [{ ...lemon, ingredient: "leeks" }, "offers no cider vinegar any more"],
  ])("[D32] %o is refused with one sentence", (choice, sentence) => {
    const made = withChosenSwaps(supper, [choice]);
    expect(made.ok ? "" : made.error).toContain(sentence);
  });

  it("[D32] so are two for one ingredient", () => {
    const both = [lemon, { ...lemon, use: "lime juice" }];
    const refused = swapsChosen(supper, both);
    expect(refused.ok ? "" : refused.error).toMatch(/choose one of them\.$/);
  });
});
