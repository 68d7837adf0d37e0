import { describe, expect, it } from "vitest";
import { respond } from "../../../core/talk/respond.ts";
import { breathWords, countWords } from "../../../core/talk/speech.ts";
import { toolNames, toolSwapFor, toolSwaps } from "../../../core/talk/tool-swaps-table.ts";
import { pattiesEvening } from "../cook/patties-evening.ts";
import { evening, kitchenAt } from "./supper.ts";

const say = (said: string, log = evening()): string => respond(said, kitchenAt(log, 3)).say;

describe("a tool that is not there", () => {
  it("[C204] is told what does its work, with what comes of it", () => {
    expect(say("what can I use instead of the blender")).toBe(
      "A masher or a fork, and a sieve where it must be smooth. It stays coarser, and takes about five minutes more.",
    );
    expect(say("we have no whisk")).toBe("Two forks held together. Allow twice as long.");
    expect(say("I do not have a thermometer")).toMatch(/^Nothing that is sure\..*cook it longer\.$/);
    // Food goes on as before.
    expect(say("what can I use instead of garlic")).not.toContain("knife");
  });

  it("[C204] where the recipe has another way for a step, that way is offered, and taken by saying so", () => {
    const patties = pattiesEvening();
    expect(say("I have no oven", patties)).toMatch(
      /^The recipe knows that for "cook": say "do it in the pan", and I plan it so\./,
    );
    expect(respond("do it in the pan", kitchenAt(patties, 3)).orders).toEqual([
      { type: "TakeWay", dish: "patties", step: "cook", way: "in a pan" },
    ]);
    expect(say("I have no oven")).not.toContain("The recipe knows");
  });

  it("[C204] each sentence is one breath, and no name means two tools", () => {
    for (const { say: told } of toolSwaps)
      expect([told, countWords(told) <= breathWords]).toEqual([told, true]);
    expect(new Set(toolNames).size).toBe(toolNames.length);
    for (const name of toolNames) expect(toolSwapFor(name)?.names).toContain(name);
  });
});
