import { describe, expect, it } from "vitest";
import { taskId } from "../../../core/plan/model.ts";
import { respond } from "../../../core/talk/respond.ts";
import { breathWords, countWords } from "../../../core/talk/speech.ts";
import { evening, kitchenAt } from "./supper.ts";
import { sayings } from "./talk.ts";

describe("mise en place by voice", () => {
  it("[C121] what is to be prepared is told over all dishes, the first need first, a breath at a time", () => {
    const [said] = sayings(evening(), [1, "what do i prepare"]);
    expect(said).toBe(
      "To prepare: mince five cloves of garlic: four for the stew, one for the flatbreads; rinse one cup of red lentils.",
    );
    expect(countWords(said ?? "")).toBeLessThanOrEqual(breathWords);
  });

  it("[C121] what is done already is left out, and where nothing is left that is said", () => {
    const chopped = evening([4, { type: "FinishTask", task: taskId("lantern-stew/chop") }]);
    expect(sayings(chopped, [5, "what is still to be prepared"])[0]).toContain(
      "mince three cloves of garlic",
    );
    const ended = evening(
      [4, { type: "FinishTask", task: taskId("lantern-stew/chop") }],
      [6, { type: "SkipTask", task: taskId("lantern-stew/simmer") }],
      [6, { type: "SkipTask", task: taskId("griddle-breads/slice") }],
    );
    expect(sayings(ended, [7, "what should i prepare"])).toEqual([
      "Nothing is left to prepare beforehand. Each step says what it needs.",
    ]);
  });

  it("[C122] asked for what is to be chopped or washed, only that is told, with the steps that see to it themselves", () => {
    expect(sayings(evening(), [1, "what is to be chopped"])).toEqual([
      "To be cut: mince five cloves of garlic: four for the stew, one for the flatbreads; halve the squash, in its step. More?",
    ]);
    expect(sayings(evening(), [1, "what do i rinse"])).toEqual([
      "To be washed: rinse one cup of red lentils.",
    ]);
    const simmered = evening([6, { type: "SkipTask", task: taskId("lantern-stew/simmer") }]);
    expect(sayings(simmered, [7, "what is to be washed"])).toEqual(["Nothing more is to be washed."]);
  });

  it("[C121] a page that has not fetched it yet says so", () => {
    const kitchen = { ...kitchenAt(evening(), 1), explain: null };
    expect(respond("what do i prepare", kitchen).say).toBe(
      "I am not ready for that yet. Say it again in a moment.",
    );
  });
});
