import { seconds } from "../units/quantity.ts";
import type { Instant } from "../units/quantity.ts";
import { err, ok } from "../units/result.ts";
import type { Decision } from "./decision.ts";
import type { Happening } from "./events.ts";
import type { ChangeTimer, StartTimer, TimerId } from "./orders.ts";
import type { Session, Timer } from "./session.ts";
import { longestTimer, mostTimers, ringOf, roomFor, timeLeft } from "./timer.ts";

const longestName = 60;

/** Orders about one timer. */
export function decideTimer(order: StartTimer | ChangeTimer, session: Session, at: Instant): Decision {
  if (order.type === "StartTimer") return start(order, session);
  const timer = session.timers.get(order.timer);
  return timer === undefined ? err({ code: "NoSuchTimer", asked: order.timer }) : change(order, timer, at);
}

function start(order: StartTimer, session: Session): Decision {
  const { timer, span, dish } = order;
  if (!(span.low >= 1) || span.high < span.low) return err({ code: "TimerTooShort" });
  if (span.high > longestTimer) return err({ code: "TimerTooLong", most: longestTimer });
  const active = [...session.timers.values()].filter((one) => one.run.state !== "stopped").length;
  if (active >= mostTimers) return err({ code: "TooManyTimers", most: mostTimers });
  const given = order.name?.trim() ?? `timer ${session.timerCount + 1}`;
  if (given === "" || given.length > longestName) return err({ code: "EmptyName" });
  const chime = session.timerCount;
  return ok([{ type: "TimerStarted", timer, name: given, task: null, dish, span, ceiling: null, chime }]);
}

function change(order: ChangeTimer, timer: Timer, at: Instant): Decision {
  const { id, name, run } = timer;
  switch (order.type) {
    case "LengthenTimer":
      return lengthen(timer, order.by, at);
    case "ShortenTimer":
      return shorten(timer, order.by, at);
    case "PauseTimer":
      return run.state === "running" && at < run.endsAt
        ? ok([{ type: "TimerPaused", timer: id }])
        : err({ code: "TimerNotRunning", name });
    case "ResumeTimer":
      return run.state === "paused"
        ? ok([{ type: "TimerResumed", timer: id }])
        : err({ code: "TimerNotPaused", name });
    case "RestartTimer":
      return ok([{ type: "TimerRestarted", timer: id }]);
    case "StopTimer":
      return run.state === "stopped"
        ? err({ code: "TimerNotRunning", name })
        : ok([{ type: "TimerStopped", timer: id }]);
    case "CancelTimer":
      return ok([{ type: "TimerCancelled", timer: id }]);
    case "RenameTimer":
      return rename(id, order.name);
    case "AnswerRing":
      return answer(timer, at);
  }
}

function lengthen(timer: Timer, by: number, at: Instant): Decision {
  if (!(by >= 1)) return err({ code: "TimerTooShort" });
  if (timer.run.state === "stopped") return err({ code: "TimerNotRunning", name: timer.name });
  if ((timeLeft(timer, at) ?? 0) + by > longestTimer)
    return err({ code: "TimerTooLong", most: longestTimer });
  const room = roomFor(timer.run, timer.ceiling, at);
  if (timer.ceiling !== null && room !== null && by > room) {
    return err({ code: "BeyondLatest", name: timer.name, ceiling: timer.ceiling, room });
  }
  return ok([{ type: "TimerLengthened", timer: timer.id, by: seconds(by) }]);
}

function shorten(timer: Timer, by: number, at: Instant): Decision {
  if (!(by >= 1)) return err({ code: "TimerTooShort" });
  const left = timeLeft(timer, at);
  if (left === null || left <= 0) return err({ code: "TimerNotRunning", name: timer.name });
  if (by >= left) return err({ code: "LessThanLeft", name: timer.name, left });
  return ok([{ type: "TimerShortened", timer: timer.id, by: seconds(by) }]);
}

function rename(timer: TimerId, asked: string): Decision {
  const name = asked.trim();
  if (name === "" || name.length > longestName) return err({ code: "EmptyName" });
  return ok([{ type: "TimerRenamed", timer, name }]);
}

/** A timer of the cook's own is over with its last ring; a step's stays until the step is done. */
function answer(timer: Timer, at: Instant): Decision {
  const ring = ringOf(timer, at);
  if (ring === null) return err({ code: "TimerNotRinging", name: timer.name });
  const answered: Happening = { type: "RingAnswered", timer: timer.id, ring: ring.ring };
  const isOver = ring.ring === "end" && timer.task === null;
  return ok(isOver ? [answered, { type: "TimerStopped", timer: timer.id }] : [answered]);
}
