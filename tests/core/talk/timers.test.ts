import { describe, expect, it } from "vitest";
import { taskId } from "../../../core/plan/model.ts";
import { minutes } from "../../../core/units/quantity.ts";
import { evening } from "./supper.ts";
import type { Line } from "./talk.ts";
import { sayings, talk } from "./talk.ts";

const say = (...lines: readonly Line[]) => sayings(evening(), ...lines);
const last = (...lines: readonly Line[]) => talk(evening(), ...lines).replies.at(-1);
const rice: Line = [0, "set a timer for twelve minutes for the rice"];

describe("timers", () => {
  it("[C50] reads the length back, and knows a dish by any of its names", () => {
    const reply = last([1, "set a timer for twelve minutes for the breads"]);
    expect(reply?.say).toBe("Twelve minutes from now, for the flatbreads.");
    expect(reply?.orders).toMatchObject([
      {
        type: "StartTimer",
        name: "flatbreads",
        dish: "griddle-breads",
        span: { low: minutes(12), high: minutes(12) },
      },
    ]);
  });

  it("[C50] a timer without a name gets a number; one may be given to it later", () => {
    expect(
      say([1, "set a timer for two minutes"], [1, "call it rice"], [1, "how long for the rice"]),
    ).toEqual([
      "Two minutes from now, on timer one.",
      "From now on I call it rice.",
      "Rice: two minutes left.",
    ]);
  });

  it("[C51] tells one timer, or all, the next to ring first", () => {
    expect(
      say(
        rice,
        [1, "set a timer for three minutes for the flatbreads"],
        [2, "which timers are on"],
        [2, "how long for the rice"],
      ),
    ).toEqual([
      "Twelve minutes from now, for the rice.",
      "Three minutes from now, for the flatbreads.",
      "Two timers: flatbreads, two minutes left; rice, ten minutes left.",
      "Rice: ten minutes left.",
    ]);
    expect(say([0, "list the timers"])).toEqual(["No timer is on."]);
  });

  it("[C52] lengthens, shortens, pauses, resumes, restarts, stops and cancels", () => {
    expect(
      say(
        rice,
        [1, "two more minutes"],
        [2, "take five minutes off the rice timer"],
        [3, "pause the timer"],
        [9, "resume the rice timer"],
        [10, "restart the timer"],
        [11, "stop the rice timer"],
        [12, "restart the rice timer"],
        [13, "cancel the rice timer"],
        [13, "how long is left"],
      ),
    ).toEqual([
      "Twelve minutes from now, for the rice.",
      "Two more minutes for the rice. Thirteen minutes left.",
      "Five minutes off the rice. Seven minutes left.",
      "Rice: paused with six minutes left.",
      "Rice runs again: six minutes left.",
      "Rice from the start: twelve minutes.",
      `Rice: stopped. Say "undo" to have it back.`,
      "Rice from the start: twelve minutes.",
      `Rice: gone. Say "undo" to have it back.`,
      `No timer is on. Say "set a timer for ten minutes".`,
    ]);
  });

  it("[C53] cancels all only after a yes", () => {
    const two: readonly Line[] = [rice, [0, "set a timer for three minutes"], [1, "cancel all timers"]];
    expect(last(...two)).toMatchObject({ say: "Cancel both timers?", orders: [] });
    expect(last(...two, [1, "yes"])).toMatchObject({
      say: "All timers are gone.",
      orders: [{ type: "CancelAllTimers" }],
    });
    expect(last(...two, [1, "no thanks"])?.orders).toEqual([]);
  });

  it("[C54] tells two of one name apart by number, and asks which", () => {
    const two: readonly Line[] = [rice, [0, "set a timer for six minutes for the rice"]];
    expect(
      say(...two, [1, "pause the rice timer"], [1, "the second"], [1, "cancel the first rice timer"]).slice(
        1,
      ),
    ).toEqual([
      "Six minutes from now, for the second rice.",
      "Which timer: first rice or second rice?",
      "Second rice: paused with five minutes left.",
      `First rice: gone. Say "undo" to have it back.`,
    ]);
  });

  it("[C55] an unknown timer is answered by those that are on", () => {
    expect(say(rice, [1, "stop the noodles timer"])[1]).toBe(
      "There is no noodles timer. There is rice, eleven minutes left.",
    );
    expect(say([1, "stop the noodles timer"])).toEqual(["There is no noodles timer; none is on."]);
  });

  it("[C56] a length that cannot be is refused in words, and nothing is ordered", () => {
    for (const [said, answer] of [
      [
        "set a timer for zero minutes",
        "A timer needs at least one second. Say how long, like twelve minutes.",
      ],
      ["set a timer for nine hundred hours", "A timer runs for two days at most. Say a shorter time."],
    ] as const) {
      expect(last([1, said])).toMatchObject({ say: answer, orders: [] });
    }
  });

  it("[C57] fifty where the recipe says ten to fifteen is asked back", () => {
    const doubt: Line = [1, "set a timer for fifty minutes for fry the flatbreads"];
    expect(last(doubt)).toMatchObject({ say: "Did you say: fifteen minutes or fifty minutes?", orders: [] });
    expect(last(doubt, [1, "fifteen minutes"])?.orders).toMatchObject([{ span: { high: minutes(15) } }]);
    expect(last(doubt, [1, "the second"])?.orders).toMatchObject([{ span: { high: minutes(50) } }]);
    expect(last([1, "set a timer for twelve minutes for fry the flatbreads"])?.orders).toHaveLength(1);
  });

  it("[C58] 'no, fifteen' takes the timer back and starts it anew", () => {
    for (const said of [
      "no, fifteen",
      "no fifteen minutes",
      "I said fifteen",
      "make that fifteen minutes",
      "no, one five",
    ]) {
      const reply = last([1, "set a timer for fifty minutes for the rice"], [1, said]);
      expect(reply).toMatchObject({
        say: "Fifteen minutes from now, for the rice.",
        orders: [{ type: "UndoLast" }, { type: "StartTimer", name: "rice", span: { high: minutes(15) } }],
      });
    }
    const end = talk(
      evening(),
      [1, "set a timer for fifty minutes for the rice"],
      [1, "no, fifteen"],
      [1, "no, sixteen"],
    );
    expect([...(end.log.session?.timers.values() ?? [])].map(({ span }) => span.high)).toEqual([minutes(16)]);
  });

  it("[C58] a correction never takes back what somebody else has done since", () => {
    const between = talk(evening(), [1, "set a timer for fifty minutes for the rice"]);
    const done = talk(between.log, [2, "what now"], [2, "done"]);
    const reply = talk(done.log, [3, "no, fifteen"]).replies.at(-1);
    expect(reply?.orders).toEqual([]);
  });

  const simmering: readonly Line[] = [
    [0, "done"],
    [1, "chop the red onion first"],
    [7, "done"],
    [8, "go to simmer the lentils"],
    [8, "it's on"],
  ];

  it("[C59] more time than the recipe allows is refused with the reason", () => {
    const reply = last(...simmering, [20, "twelve more minutes for the lentils"]);
    expect(reply?.orders).toEqual([]);
    expect(reply?.say).toContain("The recipe allows half an hour in all");
  });

  it("[C59] 'not yet' gives what the recipe gives", () => {
    expect(last(...simmering, [28.1, "not yet"])).toMatchObject({
      orders: [{ type: "LengthenTimer", by: minutes(3) }],
    });
  });

  it("[C60] a ring is answered by 'I hear it'; the step is done when the cook says so", () => {
    const heard = last(...simmering, [28.1, "I hear it"]);
    expect(heard).toMatchObject({
      say: `Good. When you have looked, say "done with the lentils" or "not yet".`,
      orders: [{ type: "AnswerRing" }],
    });
    expect(last(...simmering, [28.1, "I hear it"], [29, "done with the lentils"])?.orders).toEqual([
      { type: "FinishTask", task: taskId("lantern-stew/simmer") },
    ]);
    expect(last(rice, [12.1, "okay"])).toMatchObject({ say: "All right.", orders: [{ type: "AnswerRing" }] });
  });

  it("[C60] of two rings the one that is named is answered, and the other named as still ringing", () => {
    const beans: Line = [6, "set a timer for six minutes for the beans"];
    expect(last(rice, beans, [12.1, "I hear the beans"])).toMatchObject({
      say: "All right. Still ringing: rice.",
      orders: [{ type: "AnswerRing" }],
    });
    expect(last(rice, beans, [12.1, "I hear it"])).toMatchObject({
      say: "All right.",
      orders: [{ type: "AnswerRing" }, { type: "AnswerRing" }],
    });
  });

  it("[C61] a timer that still had time is had back with 'undo', and the answer says so", () => {
    const gone = talk(evening(), rice, [1, "cancel the rice timer"]);
    expect(gone.log.session?.timers.size).toBe(0);
    const back = talk(evening(), rice, [1, "cancel the rice timer"], [2, "undo"], [2, "how long is left"]);
    expect(back.replies.map(({ say }) => say).slice(1)).toEqual([
      `Rice: gone. Say "undo" to have it back.`,
      expect.stringMatching(/^Undone: the timer is back\. /),
      "Rice: ten minutes left.",
    ]);
    expect(say(rice, [1, "stop the rice timer"], [2, "undo"], [2, "how long is left"])).toEqual([
      expect.anything(),
      `Rice: stopped. Say "undo" to have it back.`,
      expect.stringMatching(/^Undone: the timer runs on\. /),
      "Rice: ten minutes left.",
    ]);
    expect(say(rice, [13, "cancel the rice timer"]).at(-1)).toBe("Rice: gone.");
  });
});
