import type { Instant } from "../units/quantity.ts";
import type { TimerHappening, TimerTurn } from "./events.ts";
import type { TimerId } from "./orders.ts";
import type { Session, Timer, TimerRun } from "./session.ts";
import { lengthened, paused, resumed, runFrom, shortened, spanOf } from "./timer.ts";

/** One timer's event further. An event about a timer that is not there changes nothing. */
export function evolveTimer(session: Session, happening: TimerHappening, at: Instant): Session {
  if (happening.type === "TimerStarted") {
    const timer: Timer = {
      id: happening.timer,
      name: happening.name,
      task: happening.task,
      dish: happening.dish,
      span: happening.span,
      ceiling: happening.ceiling,
      chime: happening.chime,
      run: runFrom(at, happening.span),
    };
    return withTimer({ ...session, timerCount: session.timerCount + 1 }, timer);
  }
  const timer = session.timers.get(happening.timer);
  if (timer === undefined) return session;
  if (happening.type === "TimerCancelled") return withoutTimer(session, timer.id);
  if (happening.type === "TimerRenamed") return withTimer(session, { ...timer, name: happening.name });
  return withTimer(session, { ...timer, run: ranOn(timer, happening, at) });
}

function ranOn(timer: Timer, happening: TimerTurn, at: Instant): TimerRun {
  const { run } = timer;
  switch (happening.type) {
    case "TimerLengthened":
      return lengthened(run, happening.by, timer.ceiling, at);
    case "TimerShortened":
      return shortened(run, happening.by, at);
    case "TimerPaused":
      return paused(run, at);
    case "TimerResumed":
      return resumed(run, at);
    case "TimerRestarted":
      return runFrom(at, timer.span);
    case "TimerStopped":
      return { state: "stopped", at };
    case "RingAnswered":
      return run.state === "running" ? { ...run, answered: happening.ring } : run;
  }
}

/** A step's own timer carries the step along: lengthen the one and the other may run longer. */
function withTimer(session: Session, timer: Timer): Session {
  const timers = new Map(session.timers).set(timer.id, timer);
  const progress = timer.task === null ? undefined : session.progress.get(timer.task);
  if (timer.task === null || timer.run.state !== "running" || progress?.state !== "running") {
    return { ...session, timers };
  }
  const followed = { ...progress, startedAt: timer.run.startedAt, span: spanOf(timer.run) };
  return { ...session, timers, progress: new Map(session.progress).set(timer.task, followed) };
}

function withoutTimer(session: Session, id: TimerId): Session {
  const timers = new Map(session.timers);
  timers.delete(id);
  return { ...session, timers };
}
