import { describe, expect, it } from "vitest";
import { taskId } from "../../../core/plan/model.ts";
import { evening } from "./supper.ts";
import type { Line } from "./talk.ts";
import { sayings, talk } from "./talk.ts";

const stew = (step: string) => taskId(`lantern-stew/${step}`);
const breads = (step: string) => taskId(`griddle-breads/${step}`);

/** A conversation as it is read: what was said, and what came back. */
type Script = readonly (readonly [minute: number, said: string, answer: string])[];

function reads(script: Script): void {
  const lines = script.map(([minute, said]): Line => [minute, said]);
  expect(sayings(evening(), ...lines)).toEqual(script.map(([, , answer]) => answer));
}

const orders = (...lines: readonly Line[]) => talk(evening(), ...lines).replies.at(-1)?.orders;

describe("moving", () => {
  it("[C20] calls the first step and answers 'done' with the next in the same breath", () => {
    reads([
      [0, "what now", "Set the oven to three hundred sixty-five degrees, for the stew."],
      [
        1,
        "done",
        "Oven at three hundred sixty-five degrees. Stew: Halve the squash. Two pounds of winter squash.",
      ],
      [5, "done", "Good. Flatbreads: Mix the dough. Two cups of flour and three quarters of a cup of water."],
    ]);
  });

  it("[C20] 'done' means what was called last: the oven, the step in hand, the step to put on", () => {
    expect(orders([0, "done"])).toEqual([
      { type: "SetOven", oven: "oven", heat: { degrees: 365, scale: "F" } },
    ]);
    expect(orders([0, "done"], [4, "done"])).toEqual([{ type: "FinishTask", task: stew("halve") }]);
    expect(orders([0, "done"], [4, "done"], [9, "done"], [9, "it's in"])).toEqual([
      { type: "StartTask", task: breads("rest") },
    ]);
  });

  it("[C21] finds a step by what it is about, by its doing and by its dish", () => {
    for (const said of [
      "done with the squash",
      "done with halve the squash",
      "i am done halving the squash",
      "the stew is done",
    ]) {
      expect(orders([0, "done"], [1, said])).toEqual([{ type: "FinishTask", task: stew("halve") }]);
    }
  });

  it("[C22] the cook may take another dish first", () => {
    const last = talk(evening(), [0, "done"], [1, "flatbreads first"]);
    expect(last.replies.at(-1)).toMatchObject({
      say: "Flatbreads: Mix the dough. Two cups of flour and three quarters of a cup of water.",
      orders: [{ type: "ChooseTask", task: breads("mix") }],
    });
    expect(last.log.session?.focus?.task).toBe(breads("mix"));
  });

  it("[C23] asks which step is meant, and the next utterance says so by name or by number", () => {
    const which: Line = [1, "go to the onion"];
    expect(sayings(evening(), which)).toEqual(["Which one: chop the red onion or slice the green onion?"]);
    for (const said of [
      "the second",
      "the second one",
      "slice the green onion",
      "the last one",
      "number second",
    ]) {
      expect(orders(which, [1, said])).toEqual([{ type: "ChooseTask", task: breads("slice") }]);
    }
  });

  it("[C24] leaves a step out only after a yes, and only while that question is open", () => {
    const skip: Line = [1, "skip chop the red onion"];
    expect(orders(skip)).toEqual([]);
    expect(orders(skip, [1, "yes"])).toEqual([{ type: "SkipTask", task: stew("chop") }]);
    expect(orders(skip, [1, "no"])).toEqual([]);
    expect(orders(skip, [1, "when do we eat"], [1, "yes"])).toEqual([]);
  });

  it("[C24] ends the meal only after a yes", () => {
    reads([
      [1, "end the meal", "End the meal? Ten steps are still open."],
      [1, "no", "All right, I leave it."],
      [2, "we are done cooking", "End the meal? Ten steps are still open."],
      [2, "yes", "The meal is over."],
    ]);
  });

  it("[C25] goes back, holds, goes on and undoes", () => {
    reads([
      [
        0,
        "done",
        "Oven at three hundred sixty-five degrees. Stew: Halve the squash. Two pounds of winter squash.",
      ],
      [1, "done", "Good. Flatbreads: Mix the dough. Two cups of flour and three quarters of a cup of water."],
      [2, "go back", "Back to this. Stew: Halve the squash. Two pounds of winter squash."],
      [3, "hold everything", `On hold. Take your time. Say "go on" when you are back.`],
      [9, "go on", "Welcome back. Stew: Halve the squash. Two pounds of winter squash."],
      [10, "set a timer for ten minutes", "Ten minutes from now, on timer one."],
      [10, "undo that", "Undone: the new timer. Stew: Halve the squash. Two pounds of winter squash."],
    ]);
  });

  it("[C29] takes up again, by name, a step that is over, and one that is not", () => {
    const begun: readonly Line[] = [
      [0, "done"],
      [4, "done"],
      [9, "done"],
    ];
    for (const said of [
      "take up the squash again",
      "go back to halve the squash",
      "do the squash once more",
      "I have not finished the squash",
    ]) {
      expect(talk(evening(), ...begun, [10, said]).replies.at(-1)).toMatchObject({
        say: "Back to this. Stew: Halve the squash. Two pounds of winter squash.",
        orders: [{ type: "ReopenTask", task: stew("halve") }],
      });
    }
    expect(orders(...begun, [10, "take up the red onion again"])).toEqual([
      { type: "ChooseTask", task: stew("chop") },
    ]);
    expect(sayings(evening(), [0, "take up the eel again"]).at(-1)).toMatch(
      /^There is no eel in this meal\./,
    );
  });

  it("[C26] moves dinner and says at once whether it can be made", () => {
    reads([
      [11, "we eat at half past seven", "Seven thirty it is. We can make that."],
      [11, "dinner at five", "Five o'clock it is. We can make that."],
      [11, "we eat at", "At what time do we eat?"],
      [11, "quarter past seven", "Seven fifteen it is. We can make that."],
    ]);
    expect(orders([11, "we eat at 7:30 pm"])).toEqual([
      { type: "SetServing", serveAt: Date.UTC(2030, 0, 1, 19, 30) },
    ]);
    expect(sayings(evening(), [11, "we eat at 5:30"])[0]).toMatch(
      /^Five thirty it is, but that is tight: we will be about .* late\.$/,
    );
  });

  it("[C27] an oven hotter than the oven can be was misheard", () => {
    expect(sayings(evening(), [1, "the oven is at nine hundred"])).toEqual([
      "The oven goes up to five hundred degrees. What is it at?",
    ]);
    expect(orders([1, "the oven is at 180 celsius"])).toEqual([
      { type: "SetOven", oven: "oven", heat: { degrees: 180, scale: "C" } },
    ]);
  });

  it("[C28] a running step that wanted stirring is answered by 'stirred'", () => {
    const simmering: readonly Line[] = [
      [0, "done"],
      [1, "chop the red onion first"],
      [7, "done"],
      [8, "go to simmer the lentils"],
      [8, "it's on"],
    ];
    const done = talk(evening(), ...simmering, [13.2, "stirred"]).replies.at(-1);
    expect(done?.orders).toEqual([
      { type: "GiveAttention", task: stew("simmer"), moment: "lantern-stew/simmer@stir#1" },
    ]);
    expect(orders(...simmering, [13.2, "done"])).toEqual(done?.orders);
  });
});

describe("asking back", () => {
  it("[C30] asks for the rest of half a sentence, and the next utterance completes it", () => {
    reads([
      [1, "set a timer for the flatbreads", "For how long?"],
      [1, "twelve minutes", "Twelve minutes from now, for the flatbreads."],
      [1, "how much", "How much of what?"],
      [1, "flour", "Two and a half cups of flour, in the flatbreads."],
      [1, "what can I use instead of", "Instead of what?"],
      [1, "garlic", "The recipe names nothing to use instead of garlic."],
    ]);
  });

  it("[C31] a question is dropped when something else is said, and that is answered", () => {
    reads([
      [1, "set a timer", "For how long?"],
      [1, "are we late", "No, we are on time for seven o'clock."],
      [1, "never mind", "All right."],
    ]);
  });

  it("[C32] speech that is not understood is answered with what could be said, and leaves the question open", () => {
    const end = talk(evening(), [1, "set a timer"], [1, "gribble frotz"], [1, "ten minutes"]);
    expect(end.replies[1]).toMatchObject({
      intent: null,
      orders: [],
      say: `I did not get that. You can say "never mind", or "what can I say".`,
    });
    expect(end.replies[2]?.say).toBe("Ten minutes from now, on timer one.");
  });

  it("[C33] tells what was heard, without hiding it by the asking", () => {
    reads([
      [1, "how much flour", "Two and a half cups of flour, in the flatbreads."],
      [1, "what did you hear", `I heard "how much flour".`],
      [1, "what did you hear", `I heard "how much flour".`],
      [1, "say that again", "Two and a half cups of flour, in the flatbreads."],
    ]);
  });
});

describe("the voice", () => {
  it("[C40] its orders go to the voice, never to the log", () => {
    for (const [said, order] of [
      ["louder", { type: "Louder" }],
      ["not so loud", { type: "Softer" }],
      ["slow down", { type: "Slower" }],
      ["a bit faster", { type: "Faster" }],
      ["be quiet for ten minutes", { type: "QuietFor", minutes: 10 }],
      ["you can speak again", { type: "SpeakAgain" }],
      ["stop talking", { type: "StopTalking" }],
    ] as const) {
      expect(talk(evening(), [1, said]).replies[0]).toMatchObject({ voice: [order], orders: [] });
    }
  });

  it("[C41] 'stop' says nothing, and answers a ring that goes on", () => {
    const rung = talk(evening(), [0, "set a timer for one minute"], [1.2, "stop"]).replies[1];
    expect(rung).toMatchObject({
      say: "",
      voice: [{ type: "StopTalking" }],
      orders: [{ type: "AnswerRing" }],
    });
    expect(talk(evening(), [0, "stop"]).replies[0]).toMatchObject({ say: "", orders: [] });
  });
});
