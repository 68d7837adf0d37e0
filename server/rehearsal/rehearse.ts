import type { Cue } from "../../core/cook/calls.ts";
import type { CookingMeal } from "../../core/recipe/model.ts";
import type { Kitchen as Moment } from "../../core/talk/model.ts";
import { hours, plus, seconds, type Instant } from "../../core/units/quantity.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { atMinute, clockTime, nextAtMinute } from "./clock-time.ts";
import { cookOn } from "./obliging-cook.ts";
import type { Deed, ScriptLine, When } from "./script.ts";
import { Stage, type Turn, type View } from "./stage.ts";

export interface RehearsalParts {
  readonly meal: CookingMeal;
  /** Minutes from midnight. */
  readonly from: number;
  /** Minutes from midnight; null: as soon as possible. */
  readonly serveAt: number | null;
  readonly script: readonly ScriptLine[];
  /** The words of a recording as the recogniser hears it at a moment; null where it hears no command. */
  readonly hear: (file: string, moment: Moment) => Promise<Result<string | null, string>>;
  /** Is told every turn of the conversation as it happens. */
  readonly tell: (turn: Turn) => void;
}

/** A line that comes at once leaves the caller the time to finish speaking. */
const breath = seconds(5);
/** A wait in vain ends after this, a rehearsal after that. */
const longestWait = hours(4);
const longestEvening = hours(24);

/** Plays a script from its first line to its last. Error: one sentence with the line that could not be played. */
export async function rehearse(parts: RehearsalParts): Promise<Result<View, string>> {
  const from = atMinute(parts.from);
  const serveAt = parts.serveAt === null ? null : nextAtMinute(parts.serveAt, plus(from, seconds(1)));
  const stage = new Stage(parts.meal, from, serveAt, parts.tell);
  for (const line of parts.script) {
    const reached = comeTo(stage, line.when, line.deed);
    const done = reached.ok ? await play(stage, line.deed, parts) : reached;
    if (!done.ok) return err(`Line ${line.number} of the script: ${done.error}`);
    if (stage.now > plus(from, longestEvening))
      return err(`Line ${line.number} of the script: this evening has gone on for a whole day.`);
  }
  return ok(stage.view());
}

function comeTo(stage: Stage, when: When, deed: Deed): Result<null, string> {
  const at = momentOf(stage, when, deed);
  if (at - stage.now > 12 * 3_600_000)
    return err(`the clock shows ${clockTime(stage.now)} already; that time is past.`);
  stage.pass(at);
  return ok(null);
}

function momentOf(stage: Stage, when: When, deed: Deed): Instant {
  switch (when.kind) {
    case "at":
      return nextAtMinute(when.minute, stage.now);
    case "after":
      return plus(stage.now, when.wait);
    case "at-once":
      return deed.kind === "say" || deed.kind === "hear" ? plus(stage.now, breath) : stage.now;
  }
}

async function play(stage: Stage, deed: Deed, { hear }: RehearsalParts): Promise<Result<null, string>> {
  switch (deed.kind) {
    case "pass":
      return ok(null);
    case "say":
      stage.say(deed.words);
      return ok(null);
    case "hear": {
      const heard = await hear(deed.file, stage.moment());
      if (!heard.ok) return heard;
      if (heard.value === null) stage.heardNothing(deed.file);
      else stage.say(heard.value);
      return ok(null);
    }
    case "wait-for-ring":
      return wait(stage, isRing(deed.of), "nothing rang in four hours.");
    case "wait-for-call":
      return wait(stage, () => true, "nothing was called in four hours.");
    case "cook":
      return cook(stage, deed);
  }
}

const isRing =
  (of: string | null) =>
  ({ call }: Cue): boolean =>
    call.kind === "ring" && (of === null || call.timer.name.includes(of));

function wait(stage: Stage, isIt: (cue: Cue) => boolean, inVain: string): Result<null, string> {
  const limit = plus(stage.now, longestWait);
  while (stage.now < limit) if (stage.second().some(isIt)) return ok(null);
  return err(inVain);
}

function cook(stage: Stage, { until }: Extract<Deed, { readonly kind: "cook" }>): Result<null, string> {
  const limit = plus(stage.now, longestEvening);
  switch (until.kind) {
    case "minute": {
      const at = nextAtMinute(until.minute, stage.now);
      cookOn(stage, () => stage.now >= at, at);
      stage.pass(at);
      return ok(null);
    }
    case "ring": {
      const before = stage.cues.length;
      const hasRung = (): boolean => stage.cues.slice(before).some(isRing(until.of));
      cookOn(stage, hasRung, limit);
      return hasRung() ? ok(null) : err("it did not ring before everything was ready.");
    }
    case "table":
      cookOn(stage, () => false, limit);
      return ok(null);
  }
}
