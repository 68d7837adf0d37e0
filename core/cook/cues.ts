import { longer, minus, minutes, plus, seconds } from "../units/quantity.ts";
import type { Instant } from "../units/quantity.ts";
import type { RunSheet } from "../plan/model.ts";
import type { Call, Cue } from "./calls.ts";
import { callsNow } from "./calls-now.ts";
import { latestStart } from "./ready.ts";
import { sayCall, sayLatest, sayStillAt } from "./say-call.ts";
import type { Session } from "./session.ts";

/** Said again after this long when nothing has happened. */
const again = minutes(2);
/** Warn this long before something has to start. */
const latestWarning = minutes(2);
/** A step in hand is asked after when it has taken this much longer than the recipe says. */
const overstay = minutes(2);

/**
 * What the caller has to say unasked at `now`. A pure reading of the moment: `toSay` picks
 * what a device has not said yet, and a page that was away can tell how long ago it was due.
 */
export function cuesAt(session: Session, sheet: RunSheet, now: Instant): readonly Cue[] {
  const calls = callsNow(session, sheet, now);
  return [
    ...calls.flatMap((call) => cueOf(call, session, now)),
    ...latestCues(session, now),
    ...overstayCues(calls, now),
  ];
}

function cueOf(call: Call, session: Session, now: Instant): readonly Cue[] {
  const say = sayCall(call, session, now);
  switch (call.kind) {
    case "ring":
      return [
        {
          key: `ring ${call.timer.id} ${call.ring} ${call.since}`,
          call,
          dueAt: call.since,
          againAfter: null,
          say,
        },
      ];
    case "attend": {
      const againAfter = longer(minutes(1), call.moment.within);
      return [{ key: `attend ${call.moment.key}`, call, dueAt: call.moment.at, againAfter, say }];
    }
    case "take-off":
      return [
        {
          key: `take-off ${call.task.id}`,
          call,
          dueAt: plus(call.since, minutes(1)),
          againAfter: again,
          say,
        },
      ];
    case "heat":
      return [
        { key: `heat ${call.oven} ${call.heat.degrees}`, call, dueAt: call.at, againAfter: again, say },
      ];
    case "put-on":
      return [{ key: `put-on ${call.task.id}`, call, dueAt: call.since, againAfter: again, say }];
    case "do":
      return [{ key: `do ${call.task.id} ${call.since}`, call, dueAt: call.since, againAfter: null, say }];
    case "serve":
      return [{ key: "serve", call, dueAt: call.since, againAfter: minutes(5), say }];
    case "wait":
    case "held":
    case "ended":
      return [];
  }
}

/** "Dress the salad within two minutes": a rest or a hold is about to be too long. */
function latestCues(session: Session, now: Instant): readonly Cue[] {
  return session.tasks.flatMap((task): readonly Cue[] => {
    const latest = latestStart(session, task);
    if (latest === null || session.progress.get(task.id)?.state !== "waiting") return [];
    const dueAt = minus(latest, latestWarning);
    if (now < dueAt || session.focus?.task === task.id) return [];
    const call: Call = { kind: task.step.hands === "on" ? "do" : "put-on", task, since: dueAt };
    return [
      { key: `latest ${task.id}`, call, dueAt, againAfter: latestWarning, say: sayLatest(task, latest, now) },
    ];
  });
}

function overstayCues(calls: readonly Call[], now: Instant): readonly Cue[] {
  return calls.flatMap((call): readonly Cue[] => {
    if (call.kind !== "do") return [];
    const dueAt = plus(call.since, seconds(call.task.step.time.high + overstay));
    const key = `still ${call.task.id} ${call.since}`;
    return now < dueAt ? [] : [{ key, call, dueAt, againAfter: minutes(5), say: sayStillAt(call.task) }];
  });
}
