import type { Call, Cue } from "../../core/cook/calls.ts";
import type { Task } from "../../core/plan/model.ts";
import { later, minutes, plus, seconds, type Instant, type Seconds } from "../../core/units/quantity.ts";
import { firstCall, likely, type Stage, type View } from "./stage.ts";

/** What the cook says to a call, and how long after it came up. */
interface Response {
  readonly words: string;
  readonly after: Seconds;
}

/** The caller's answer to the line before is heard out. */
const breath = seconds(5);
/** From the oven or the stove to the place where the caller is heard. */
const handsFree = seconds(20);
/** To set something going: a minute, as the plan counts it. */
const settingGoing = minutes(1);

/**
 * How a cook answers who does what is called in the time that the recipe says; null where there is nothing to do.
 * A look finds the food done: who wants it otherwise writes it into the script.
 */
function responseTo(call: Call): Response | null {
  switch (call.kind) {
    case "do":
      return { words: "done", after: likely(call.task.step.time) };
    case "put-on":
      return { words: "it's on", after: settingGoing };
    case "ring":
    case "take-off":
    case "attend":
    case "heat":
      return { words: "done", after: handsFree };
    case "held":
      return { words: "go on", after: handsFree };
    case "wait":
    case "serve":
    case "ended":
      return null;
  }
}

/** When the cook knows of a call: a step from its beginning, oven heat when it is called aloud, the rest at once. */
function cameUp(call: Call, now: Instant): Instant {
  switch (call.kind) {
    case "do":
      return call.since;
    case "heat":
      return later(call.at, now);
    case "ring":
    case "attend":
    case "take-off":
    case "put-on":
    case "wait":
    case "serve":
    case "held":
    case "ended":
      return now;
  }
}

/** What makes two calls the same one. */
function keyOf(call: Call): string {
  switch (call.kind) {
    case "ring":
      return `ring ${call.timer.id} ${call.ring} ${call.since}`;
    case "attend":
      return `attend ${call.moment.key}`;
    case "heat":
      return `heat ${call.oven} ${call.heat.degrees}`;
    case "take-off":
    case "put-on":
    case "do":
      return `${call.kind} ${call.task.id} ${call.kind === "do" ? call.since : ""}`;
    case "wait":
    case "serve":
    case "held":
    case "ended":
      return call.kind;
  }
}

/** The step that the caller has just said cannot wait, unless it is what the cook is at; null for none. */
function urgent(cues: readonly Cue[], { session }: View): Task | null {
  const cue = cues.find(
    ({ key, call }) => key.startsWith("latest ") && (call.kind === "do" || call.kind === "put-on"),
  );
  const task = cue !== undefined && "task" in cue.call ? cue.call.task : null;
  return task === null || session.focus?.task === task.id ? null : task;
}

/**
 * Cooks on as called until `isReached`, or until everything is ready to serve.
 * @param limit no rehearsal goes on longer than this
 */
export function cookOn(stage: Stage, isReached: () => boolean, limit: Instant): void {
  let key = "";
  let since = stage.now;
  const ready = plus(stage.now, breath);
  while (!isReached() && stage.now < limit) {
    const call = firstCall(stage.view());
    if (call === null || call.kind === "serve" || call.kind === "ended") return;
    if (keyOf(call) !== key) [key, since] = [keyOf(call), cameUp(call, stage.now)];
    const response = responseTo(call);
    if (response !== null && stage.now >= later(ready, plus(since, response.after))) {
      stage.say(response.words);
      key = "";
      continue;
    }
    const cannotWait = urgent(stage.second(), stage.view());
    if (cannotWait !== null) stage.say(`${cannotWait.step.title} first`);
  }
}
