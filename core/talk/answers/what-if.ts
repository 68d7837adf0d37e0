import { listed } from "../../cook/say-call.ts";
import { isReady } from "../../cook/ready.ts";
import { planInputOf } from "../../cook/run-sheet.ts";
import { upcoming } from "../../cook/next-call.ts";
import { helpers as allHelpers } from "../../plan/worker.ts";
import type { PlanInput, Task } from "../../plan/model.ts";
import { plan } from "../../plan/plan.ts";
import { bindingsOf } from "../../plan/critical-chain.ts";
import type { Instant } from "../../units/quantity.ts";
import type { Kitchen as Equipment, Step } from "../../recipe/model.ts";
import { spokenClock } from "../../units/clock-words.ts";
import { spokenDuration, spokenRoughly } from "../../units/duration.ts";
import { between, hours, plus, seconds } from "../../units/quantity.ts";
import type { Result } from "../../units/result.ts";
import { err, ok } from "../../units/result.ts";
import type { OneMore } from "../intent.ts";
import type { Kitchen } from "../model.ts";
import { inProgress } from "../names.ts";
import type { Outcome, Scene } from "../outcome.ts";
import { asksFor, ordered, told } from "../outcome.ts";
import { breathWords, clockAt, countWords, inBreath, inParts, theDish } from "../speech.ts";
import { nextAt } from "./evening.ts";
import { lateWithout } from "./leave-out.ts";

/** "What if we eat at seven?": planned so, told, and left as it was. */
export function whatIfServeAt(minute: number | null, scene: Scene, kitchen: Kitchen): Outcome {
  if (minute === null) return asksFor({ type: "WhatIfServeAt", minute: null }, "At what time?");
  const serveAt = nextAt(minute, kitchen);
  // The clock has gone round: what was meant lies behind.
  if (between(kitchen.now, serveAt) > hours(12)) return told(`It is past ${spokenClock(minute)} already.`);
  const way = `I only looked: say "we eat at ${spokenClock(minute)}" to do so.`;
  const { say } = ordered(kitchen, [{ type: "SetServing", serveAt }], (then) =>
    inBreath([
      verdict(serveAt, then, kitchen, breathWords - countWords(way)),
      way,
      ...newlyBroken(scene, then),
      ...nextStep(scene, then),
    ]),
  );
  return told(say);
}

/** Whether it would be in time; if not, without which dish, or else when, as far as so many words go. */
function verdict(serveAt: Instant, then: Scene, kitchen: Kitchen, words: number): string {
  const { late, readyAt } = then.sheet;
  if (late <= 60) return `We would make ${clockAt(serveAt, kitchen)}.`;
  const without = lateWithout(then, kitchen);
  const by = `We would be ${spokenRoughly(late)} late`;
  const more = [...(without === null ? [] : [without]), `ready at ${clockAt(readyAt, kitchen)}`];
  return more.map((rest) => `${by}, ${rest}.`).find((said) => countWords(said) <= words) ?? `${by}.`;
}

/** What would no longer keep, lateness apart. */
function newlyBroken(scene: Scene, then: Scene): readonly string[] {
  const limits = (one: Scene) =>
    one.sheet.broken.filter((sentence) => !sentence.startsWith("Dinner will be"));
  const known = limits(scene);
  return limits(then).filter((sentence) => !known.includes(sentence));
}

/** What would come next, where that is another step than now. */
function nextStep(scene: Scene, then: Scene): readonly string[] {
  const [now] = upcoming(scene.session, scene.sheet);
  const [next] = upcoming(then.session, then.sheet);
  if (next === undefined) return [];
  return next.task.id === now?.task.id
    ? [`Next is still ${next.task.step.title}.`]
    : [`Next would be ${next.task.step.title}.`];
}

/** "Another burner": how it is called. */
const names: Readonly<Record<OneMore, string>> = {
  burner: "burner",
  rack: "oven rack",
  oven: "oven",
  cook: "pair of hands",
};

/** The evening with one more of it, or why there is nothing to plan. A course that was laid was laid without it. */
function withOneMore(thing: OneMore, { course: _laid, ...input }: PlanInput): Result<PlanInput, string> {
  const { kitchen } = input.meal;
  const [oven] = kitchen.ovens;
  if (thing === "cook") {
    const fresh = allHelpers.find((one) => input.helpers.every(({ helper }) => helper !== one));
    return fresh === undefined
      ? err("There are three of you. I cannot call for more.")
      : ok({ ...input, helpers: [...input.helpers, { helper: fresh, inHand: null }] });
  }
  if (thing === "burner") return ok(inKitchen({ ...kitchen, burners: kitchen.burners + 1 }, input));
  if (oven === undefined) return err("This kitchen has no oven that I know of, so I cannot tell.");
  const ovens =
    thing === "rack"
      ? kitchen.ovens.map((one) => ({ ...one, racks: one.racks + 1 }))
      : [...kitchen.ovens, { ...oven, name: `second ${oven.name}` }];
  return ok(inKitchen({ ...kitchen, ovens }, input));
}

const inKitchen = (kitchen: Equipment, input: PlanInput): PlanInput => ({
  ...input,
  meal: { ...input.meal, kitchen },
  ovens: kitchen.ovens.map(
    ({ name }) => input.ovens.find(({ oven }) => oven === name) ?? { oven: name, heat: null, setAt: null },
  ),
});

/** "What if I had one more burner?": how much sooner all could be ready, by the same planner in both kitchens. */
export function whatIfOneMore(thing: OneMore, { session }: Scene, kitchen: Kitchen): Outcome {
  const name = names[thing];
  const isLeft = session.tasks.some((task) => session.progress.get(task.id)?.state === "waiting");
  if (session.phase.state === "ended" || !isLeft)
    return told("Nothing is left to start, so it would change nothing.");
  const soonest = { ...planInputOf(session, kitchen.now), serveAt: null };
  const more = withOneMore(thing, soonest);
  if (!more.ok) return told(more.error);
  // A list of its own for each: the planner keeps what it found best for one kitchen by the list of tasks.
  const now = plan({ ...soonest, tasks: [...session.tasks] });
  const then = plan({ ...more.value, tasks: [...session.tasks] });
  const gained = between(then.readyAt, now.readyAt);
  if (gained < 60) return told(`One more ${name} would bring dinner no sooner.`);
  return told(
    `With one more ${name} all could be ready ${spokenRoughly(gained)} sooner, at ${clockAt(then.readyAt, kitchen)}.`,
  );
}

/** The step from which on it keeps: this one, or the first after it in its dish that does; null where none does. */
function keepsFrom({ dish, step }: Task): Step | null {
  const after = [step];
  for (const one of after) {
    if (one.ahead !== null) return one;
    after.push(
      ...dish.steps.filter(
        (later) => !after.includes(later) && later.after.some((link) => link.step === one.id),
      ),
    );
  }
  return null;
}

/** Work by hand that is not over and is, or leads to, something that keeps. */
const worthAhead = ({ session }: Scene): readonly (readonly [Task, Step])[] =>
  session.tasks.flatMap((task): readonly (readonly [Task, Step])[] => {
    const from = keepsFrom(task);
    const state = session.progress.get(task.id)?.state;
    const isOpen = state === "waiting" || session.focus?.task === task.id;
    return from === null || !isOpen || task.step.hands === "off" ? [] : [[task, from]];
  });

/** "What can I do ahead?": work by hand for what keeps until dinner, where nothing prevents it now. */
export function whatAhead(scene: Scene, kitchen: Kitchen): Outcome {
  const { session, sheet } = scene;
  const bindings = bindingsOf(planInputOf(session, kitchen.now), sheet);
  const ahead = worthAhead(scene);
  const now = ahead.flatMap(([task, from]): readonly string[] => {
    const kind = bindings.get(task.id)?.kind;
    const isTaken = kind === "thing" || kind === "rack" || kind === "heat";
    const keeps = from.ahead ?? seconds(0);
    const isTooEarly = plus(plus(kitchen.now, task.step.time.low), keeps) < sheet.readyAt;
    if (isTaken || isTooEarly || !isReady(session, task, kitchen.now)) return [];
    const after = from === task.step ? "" : ` after ${inProgress(from.title)}`;
    return [`${task.step.title}, keeps ${spokenDuration(keeps)}${after}`];
  });
  if (now.length > 0) return inParts("You can do ahead:", now);
  const dishes = [...new Set(ahead.map(([{ dish }]) => theDish(dish)))];
  return told(
    dishes.length === 0
      ? "Nothing by hand is left that can be done ahead."
      : `Nothing can be done ahead just now. Later there is something for ${listed(dishes)}.`,
  );
}
