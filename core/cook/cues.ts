import { wayPlanned } from "../plan/way-words.ts";
import type { Step } from "../recipe/model.ts";
import { between, longer, minus, minutes, plus, seconds } from "../units/quantity.ts";
import type { Instant, Seconds } from "../units/quantity.ts";
import type { RunSheet } from "../plan/model.ts";
import type { Call, Cue } from "./calls.ts";
import { callsNow, helperCalls } from "./calls-now.ts";
import { holderOf } from "./hands.ts";
import { latestStart } from "./ready.ts";
import { sayCall, sayLatest, sayStillAt } from "./say-call.ts";
import type { Session } from "./session.ts";

/** Said again after this long when nothing has happened. */
const again = minutes(2);
/** Warn this long before something has to start. */
const latestWarning = minutes(2);
/** A step in hand is asked after when it has taken this much longer than the recipe says, or than this cook takes. */
const overstay = minutes(2);

/**
 * What the caller has to say unasked at `now`. A pure reading of the moment: `toSay` picks
 * what a device has not said yet, and a page that was away can tell how long ago it was due.
 */
export function cuesAt(session: Session, sheet: RunSheet, now: Instant): readonly Cue[] {
  const calls = [...callsNow(session, sheet, now), ...helperCalls(session)];
  return [
    ...wayCues(session, calls, now),
    ...calls.flatMap((call) => cueOf(call, session, now)),
    ...latestCues(session, now),
    ...overstayCues(calls, now),
  ];
}

/** How a step is done that could be done otherwise, and why: said as the evening begins, one sentence at most. */
function wayCues(session: Session, calls: readonly Call[], now: Instant): readonly Cue[] {
  const dueAt = session.begunAt;
  const steps = session.tasks.map(({ step }) => step);
  // What differs from the recipe's own way is news before what does not.
  const step = steps.find(isOther) ?? steps.find(({ ways }) => ways?.chosen.by === "plan");
  const say = step === undefined ? null : wayPlanned(step);
  const [call] = calls;
  if (say === null || call === undefined || between(dueAt, now) > again) return [];
  return [{ key: "way", call, dueAt, againAfter: null, say }];
}

const isOther = ({ ways }: Step): boolean => ways?.chosen.by === "plan" && ways.taken !== ways.all[0]?.name;

function cueOf(call: Call, session: Session, now: Instant): readonly Cue[] {
  const cue = (key: string, dueAt: Instant, againAfter: Seconds | null): readonly Cue[] => [
    { key, call, dueAt, againAfter, say: sayCall(call, session, now) },
  ];
  switch (call.kind) {
    case "ring":
      return cue(`ring ${call.timer.id} ${call.ring} ${call.since}`, call.since, null);
    case "attend":
      return cue(`attend ${call.moment.key}`, call.moment.at, longer(minutes(1), call.moment.within));
    case "take-off":
      return cue(`take-off ${call.task.id}`, plus(call.since, minutes(1)), again);
    case "heat":
      return cue(`heat ${call.oven} ${call.heat.degrees}`, call.at, again);
    case "put-on":
      return cue(`put-on ${call.task.id}`, call.since, again);
    case "do":
      return cue(`do ${call.task.id} ${call.since}`, call.since, null);
    case "serve":
      return cue("serve", call.since, minutes(5));
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
    if (now < dueAt || holderOf(session, task.id) !== null) return [];
    const call: Call = { kind: task.step.hands === "on" ? "do" : "put-on", task, since: dueAt, by: "cook" };
    return [
      { key: `latest ${task.id}`, call, dueAt, againAfter: latestWarning, say: sayLatest(task, latest, now) },
    ];
  });
}

function overstayCues(calls: readonly Call[], now: Instant): readonly Cue[] {
  return calls.flatMap((call): readonly Cue[] => {
    if (call.kind !== "do") return [];
    const dueAt = plus(
      call.since,
      seconds(call.task.step.time.high * Math.max(1, call.task.pace) + overstay),
    );
    const key = `still ${call.task.id} ${call.since}`;
    return now < dueAt
      ? []
      : [{ key, call, dueAt, againAfter: minutes(5), say: sayStillAt(call.task, call.by) }];
  });
}
