import { describe, expect, it } from "vitest";
import { sentence } from "../../../core/cook/refusal.ts";
import { decide } from "../../../core/cook/decide.ts";
import type { Order } from "../../../core/cook/orders.ts";
import { timerId } from "../../../core/cook/orders.ts";
import type { Timer } from "../../../core/cook/session.ts";
import { ringOf, timeLeft } from "../../../core/cook/timer.ts";
import { minutes, seconds } from "../../../core/units/quantity.ts";
import { at, evening, give, outcome, sessionOf, task } from "./supper.ts";

const bread = timerId("bread");
const start = (low: number, high = low): Order => ({
  type: "StartTimer",
  timer: bread,
  name: "flatbreads",
  span: { low: minutes(low), high: minutes(high) },
  dish: null,
});
const timerOf = (log: ReturnType<typeof evening>, id = bread): Timer => {
  const timer = sessionOf(log).timers.get(id);
  if (timer === undefined) throw new Error(`no timer ${id}`);
  return timer;
};
const simmering = () =>
  evening([0, { type: "FinishTask", task: task.wash }], [0, { type: "StartTask", task: task.simmer }]);
const simmerTimer = (log: ReturnType<typeof evening>) =>
  [...sessionOf(log).timers.values()].find((timer) => timer.task === task.simmer)?.id ?? timerId("none");

describe("timers", () => {
  it("[T1] a timer rings at its end and goes on, a round every twenty seconds, until it is answered", () => {
    const log = evening([0, start(12)]);
    expect(ringOf(timerOf(log), at(11.9))).toBeNull();
    expect(ringOf(timerOf(log), at(12))).toEqual({ ring: "end", since: at(12), round: 0 });
    expect(ringOf(timerOf(log), at(13))).toEqual({ ring: "end", since: at(12), round: 3 });
    const answered = give(log, 13, { type: "AnswerRing", timer: bread });
    expect(ringOf(timerOf(answered), at(14))).toBeNull();
  });

  it("[T2] a range rings at its early end for a look and at its late end for good", () => {
    const log = evening([0, start(10, 15)]);
    expect(ringOf(timerOf(log), at(10))?.ring).toBe("look");
    const looked = give(log, 10, { type: "AnswerRing", timer: bread });
    expect(ringOf(timerOf(looked), at(14))).toBeNull();
    expect(ringOf(timerOf(looked), at(15))?.ring).toBe("end");
  });

  it("[T3] a look that was never answered still rings for good at the late end", () => {
    expect(ringOf(timerOf(evening([0, start(10, 15)])), at(16))).toEqual({
      ring: "end",
      since: at(15),
      round: 3,
    });
  });

  it("[T4] pausing a timer keeps its remaining seconds", () => {
    const stopped = give(evening([0, start(12)]), 5, { type: "PauseTimer", timer: bread });
    expect(timeLeft(timerOf(stopped), at(50))).toBe(seconds(420));
    const again = give(stopped, 60, { type: "ResumeTimer", timer: bread });
    expect(timeLeft(timerOf(again), at(60))).toBe(seconds(420));
    expect(ringOf(timerOf(again), at(67))?.ring).toBe("end");
  });

  it("[T5] lengthening before the first ring moves both ends; after it, the next look comes in that time", () => {
    const log = evening([0, start(10, 15)]);
    expect(timerOf(give(log, 5, { type: "LengthenTimer", timer: bread, by: minutes(2) })).run).toMatchObject({
      lookAt: at(12),
      endsAt: at(17),
    });
    expect(timerOf(give(log, 11, { type: "LengthenTimer", timer: bread, by: minutes(2) })).run).toMatchObject(
      {
        lookAt: at(13),
        endsAt: at(15),
        answered: "none",
      },
    );
    expect(timerOf(give(log, 16, { type: "LengthenTimer", timer: bread, by: minutes(2) })).run).toMatchObject(
      {
        lookAt: at(18),
        endsAt: at(18),
      },
    );
  });

  it("[T6] two more minutes are granted up to the recipe's latest and refused beyond it, with the reason", () => {
    const log = simmering();
    const timer = simmerTimer(log);
    const more = give(log, 20, { type: "LengthenTimer", timer, by: minutes(3) });
    expect(ringOf(timerOf(more, timer), at(23))?.ring).toBe("end");
    const refused = decide(
      { id: "x", at: at(23), order: { type: "LengthenTimer", timer, by: minutes(3) } },
      more,
    );
    expect(refused).toEqual({
      ok: false,
      error: { code: "BeyondLatest", name: "simmer the greens", ceiling: minutes(25), room: minutes(2) },
    });
    expect(refused.ok ? "" : sentence(refused.error)).toBe(
      "The recipe allows twenty-five minutes in all for this: simmer the greens. At most two minutes more.",
    );
  });

  it("[T7] shortening moves both ends and refuses to take more than is left", () => {
    const log = evening([0, start(10, 15)]);
    expect(timerOf(give(log, 5, { type: "ShortenTimer", timer: bread, by: minutes(3) })).run).toMatchObject({
      lookAt: at(7),
      endsAt: at(12),
    });
    expect(outcome(log, 5, { type: "ShortenTimer", timer: bread, by: minutes(10) })).toBe("LessThanLeft");
  });

  it("[T8] a restarted timer runs its first time anew, also after it was stopped", () => {
    const log = give(evening([0, start(12)]), 3, { type: "StopTimer", timer: bread });
    expect(timeLeft(timerOf(log), at(4))).toBeNull();
    expect(timeLeft(timerOf(give(log, 20, { type: "RestartTimer", timer: bread })), at(20))).toBe(
      minutes(12),
    );
  });

  it("[T9] zero, nine hundred hours, a number that is none and a blank name are refused", () => {
    const log = evening();
    expect(outcome(log, 0, start(0))).toBe("TimerTooShort");
    expect(outcome(log, 0, start(Number.NaN))).toBe("TimerTooShort");
    expect(outcome(log, 0, start(15, 10))).toBe("TimerTooShort");
    expect(outcome(log, 0, start(900 * 60))).toBe("TimerTooLong");
    expect(outcome(log, 0, { ...start(5), name: "  " } as Order)).toBe("EmptyName");
  });

  it("[T10] a timer without a name is named by its number and told apart from the next one", () => {
    const log = evening([0, { ...start(5), name: null } as Order]);
    const both = give(log, 1, { ...start(6), name: null, timer: timerId("other") } as Order);
    expect([...sessionOf(both).timers.values()].map((one) => [one.name, one.chime])).toEqual([
      ["timer 1", 0],
      ["timer 2", 1],
    ]);
  });

  it("[T11] cancelling all leaves none; a timer that is gone is refused by name", () => {
    const log = give(evening([0, start(5)]), 1, { type: "CancelAllTimers" });
    expect(sessionOf(log).timers.size).toBe(0);
    expect(outcome(log, 2, { type: "PauseTimer", timer: bread })).toBe("NoSuchTimer");
  });

  it("[T12] a step's timer starts with the step, carries it along and ends with it", () => {
    const log = simmering();
    const timer = simmerTimer(log);
    expect(timerOf(log, timer)).toMatchObject({ name: "simmer the greens", ceiling: minutes(25) });
    const more = give(log, 10, { type: "LengthenTimer", timer, by: minutes(5) });
    expect(sessionOf(more).progress.get(task.simmer)).toMatchObject({
      span: { low: minutes(25), high: minutes(25) },
    });
    const done = give(more, 22, { type: "FinishTask", task: task.simmer });
    expect(timerOf(done, timer).run).toEqual({ state: "stopped", at: at(22) });
  });

  it("[T13] what is not running cannot be paused, what is not paused cannot go on, silence needs no answer", () => {
    const log = evening([0, start(5)]);
    expect(outcome(log, 1, { type: "ResumeTimer", timer: bread })).toBe("TimerNotPaused");
    expect(outcome(log, 1, { type: "AnswerRing", timer: bread })).toBe("TimerNotRinging");
    expect(
      outcome(give(log, 1, { type: "PauseTimer", timer: bread }), 2, { type: "PauseTimer", timer: bread }),
    ).toBe("TimerNotRunning");
  });

  it("[T14] a renamed timer answers to its new name", () => {
    expect(
      timerOf(give(evening([0, start(5)]), 1, { type: "RenameTimer", timer: bread, name: "rolls" })).name,
    ).toBe("rolls");
  });
});
