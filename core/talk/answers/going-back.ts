import { asksForDeed } from "../deeds.ts";
import { lastCommand } from "../../cook/last-command.ts";
import { sayStep } from "../../cook/say-call.ts";
import { runningMoments, dueMoments } from "../../cook/calls-now.ts";
import type { Happening } from "../../cook/events.ts";
import type { MealLog } from "../../cook/session.ts";
import type { Moment, Task } from "../../plan/model.ts";
import type { Dish } from "../../recipe/model.ts";
import { spokenRoughly } from "../../units/duration.ts";
import { between, minutes } from "../../units/quantity.ts";
import { findDish, wordsIn } from "../find.ts";
import { currentTask, isOpen, lastOver } from "../find-task.ts";
import type { Mention } from "../intent.ts";
import type { Kitchen } from "../model.ts";
import type { Consent, Outcome, Scene } from "../outcome.ts";
import { asksLeave, ordered, told } from "../outcome.ts";
import { firstCall, sayNow, theDish } from "../speech.ts";
import { chosen, inOneBreath, withTask } from "./steps.ts";

/** "Back": the step that was finished or skipped last is open again. */
export function back(scene: Scene, kitchen: Kitchen): Outcome {
  const last = lastOver(scene.session.tasks, scene)[0];
  if (last === undefined) return told("This is the first step; there is nothing before it.");
  return opened(last, kitchen);
}

/** "Take up the squash again"; a step that is not over is simply taken up. */
export function reopen(target: Mention | null, scene: Scene, kitchen: Kitchen): Outcome {
  if (target === null) return back(scene, kitchen);
  return withTask(
    target,
    scene,
    kitchen,
    "reopen",
    (by) => ({ type: "Reopen", target: by }),
    (task) => (isOpen(task, scene) ? chosen(task, kitchen) : opened(task, kitchen)),
  );
}

const opened = (task: Task, kitchen: Kitchen): Outcome =>
  ordered(kitchen, [{ type: "ReopenTask", task: task.id }], () => `Back to this. ${sayStep(task)}`);

/** "Skip this", once the cook has said yes to it. */
export function skip(target: Mention | null, scene: Scene, kitchen: Kitchen, consent: Consent): Outcome {
  if (target !== null) {
    return withTask(
      target,
      scene,
      kitchen,
      "ask",
      (by) => ({ type: "Skip", target: by }),
      (task) => skipOne(task, kitchen, consent),
    );
  }
  const current = currentTask(scene, kitchen);
  return current === null
    ? told(`There is nothing to skip. ${sayNow(scene, kitchen)}`)
    : skipOne(current, kitchen, consent);
}

function skipOne(task: Task, kitchen: Kitchen, consent: Consent): Outcome {
  const { title } = task.step;
  if (consent === "wanted")
    return asksLeave({ type: "Skip", target: { by: "task", task: task.id } }, `Leave this out: ${title}?`);
  return ordered(kitchen, [{ type: "SkipTask", task: task.id }], (then) =>
    inOneBreath(`Left out: ${title}.`, then, kitchen),
  );
}

/** "Go to step three of the slaw". */
export function goToNumber(number: number, mention: Mention | null, scene: Scene, kitchen: Kitchen): Outcome {
  const named = mention === null ? null : findDish(mention, scene.session);
  const dish =
    named === null ? currentTask(scene, kitchen)?.dish : named.kind === "one" ? named.value : undefined;
  if (dish === undefined) {
    const dishes = scene.session.meal.dishes.map(theDish).join(", ");
    return told(
      named === null
        ? `Of which dish? We have ${dishes}.`
        : `There is no ${wordsIn(mention ?? { by: "words", words: "" })} in this meal. We have ${dishes}.`,
    );
  }
  const step = dish.steps[number - 1];
  if (step === undefined)
    return told(`There are ${dish.steps.length} steps in ${theDish(dish)}. Name one of those.`);
  const batches = scene.session.tasks.filter((task) => task.dish.id === dish.id && task.step.id === step.id);
  const task = batches.find((one) => isOpen(one, scene)) ?? batches.at(-1);
  return task === undefined ? told("That step is not in this meal.") : chosen(task, kitchen);
}

/** How early a stir may be reported: a cook who stirs a little before the call has still stirred. */
const EARLY = minutes(2);

/** "Stirred": the moment that a running step asked for has been seen to. */
export function attended(deed: string | null, scene: Scene, kitchen: Kitchen): Outcome {
  const { session } = scene;
  const running = session.tasks.filter((task) => session.progress.get(task.id)?.state === "running");
  const soon = running
    .flatMap((task) => runningMoments(session, task))
    .filter(
      (moment) =>
        !session.attended.has(moment.key) &&
        moment.at > kitchen.now &&
        between(kitchen.now, moment.at) <= EARLY,
    );
  const open = [...dueMoments(session, kitchen.now), ...soon];
  const moment =
    open.find((one) => deed === null || asksForDeed(one.do, deed)) ??
    (open.length === 1 ? open[0] : undefined);
  if (moment === undefined) {
    // "It's flipped" may also be the whole of the step in hand.
    return told(`Good. Nothing else asks for that now. ${sayNow(scene, kitchen)}`);
  }
  return ordered(kitchen, [{ type: "GiveAttention", task: moment.task, moment: moment.key }], (then) => {
    const call = firstCall(then, kitchen);
    return call?.kind === "wait"
      ? `Good. ${nextTime(moment, then, kitchen)}`.trim()
      : inOneBreath("Good.", then, kitchen);
  });
}

function nextTime(moment: Moment, { session }: Scene, kitchen: Kitchen): string {
  const task = session.tasks.find((one) => one.id === moment.task);
  const next =
    task === undefined
      ? undefined
      : runningMoments(session, task).find((one) => one.at > kitchen.now && one.do === moment.do);
  return next === undefined ? "" : `Once more in ${spokenRoughly(between(kitchen.now, next.at))}.`;
}

/** Takes back the last thing that the cook did, and says what that was. */
export function undoThat(scene: Scene, kitchen: Kitchen): Outcome {
  const what = lastDeed(kitchen.log, scene);
  return ordered(kitchen, [{ type: "UndoLast" }], (then) =>
    inOneBreath(what === null ? "Undone." : `Undone: ${what}.`, then, kitchen),
  );
}

function lastDeed(log: MealLog, scene: Scene): string | null {
  const command = lastCommand(log);
  const happenings = log.events.filter((event) => event.command === command).map((event) => event.happening);
  const [only, ...others] = happenings;
  if (only?.type === "TimerCancelled" && others.length === 0) return "the timer is back";
  const dish = dishLeftOut(happenings, scene);
  if (dish !== null) return `${theDish(dish)} is back`;
  const deeds = happenings.map((happening) => deedOf(happening, scene));
  return deeds.find((deed) => deed !== null) ?? null;
}

/** Several steps that were left out at once are all that was left of their dish. */
function dishLeftOut(happenings: readonly Happening[], { session }: Scene): Dish | null {
  const skipped = happenings.flatMap((one) => (one.type === "TaskSkipped" ? [one.task] : []));
  const task = session.tasks.find(({ id }) => id === skipped[0]);
  return task === undefined || skipped.length < 2 ? null : task.dish;
}

const DEEDS: ReadonlyMap<Happening["type"], string> = new Map<Happening["type"], string>([
  ["PaceSet", "your pace"],
  ["PaceForgotten", "your pace is known again"],
  ["ServingSet", "the time for dinner"],
  ["LullSet", "what you wished for the last minutes"],
  ["SwapUsed", "the swap"],
  ["WayTaken", "the other way"],
  ["HelperCame", "the helper is not here"],
  ["HelperLeft", "the helper is here again"],
  ["TimerLengthened", "the change of time"],
  ["TimerShortened", "the change of time"],
  ["TimerCancelled", "the timers are back"],
  ["TimerStopped", "the timer runs on"],
  ["PreparingFinished", "it is still to be prepared"],
  ["PreparingReopened", "it is prepared"],
  ["AmountChanged", "the other amount"],
  ["ServingsChanged", "the other servings"],
  ["NextTimeNoted", "the note for next time"],
  ["NoteAnswered", "what you said to the note"],
]);

function deedOf(happening: Happening, { session }: Scene): string | null {
  if (happening.type === "TimerStarted") {
    return /^timer \d/.test(happening.name) ? "the new timer" : `the ${happening.name} timer`;
  }
  if (happening.type === "OvenSet") return `the ${happening.oven}`;
  const title =
    "task" in happening ? session.tasks.find((task) => task.id === happening.task)?.step.title : null;
  return title ?? DEEDS.get(happening.type) ?? null;
}
