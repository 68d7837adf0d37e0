import { helperCalls } from "../../cook/calls-now.ts";
import type { Call } from "../../cook/calls.ts";
import type { Order } from "../../cook/orders.ts";
import { upcoming } from "../../cook/next-call.ts";
import { sayCall, sayStep } from "../../cook/say-call.ts";
import type { Task } from "../../plan/model.ts";
import { spokenSpan } from "../../units/duration.ts";
import { spokenHeat } from "../../units/temperature.ts";
import type { Found } from "../find.ts";
import { asksWhich, wordsIn } from "../find.ts";
import type { Purpose } from "../find-task.ts";
import { currentTask, findTask, isOpen, taskName } from "../find-task.ts";
import type { Intent, Mention } from "../intent.ts";
import type { Kitchen } from "../model.ts";
import type { Outcome, Scene } from "../outcome.ts";
import { ordered, told } from "../outcome.ts";
import { inProgress } from "../names.ts";
import { capital } from "../../units/capital.ts";
import { firstCall, inParts, inTime, sayNow } from "../speech.ts";

/** What to do now. The call is made there and then, so that the step is before the cook. */
export function whatNow(scene: Scene, kitchen: Kitchen): Outcome {
  return scene.session.phase.state === "ended"
    ? told(sayNow(scene, kitchen))
    : ordered(kitchen, [{ type: "Tick" }], (then) => sayNow(then, kitchen));
}

/** What comes after the step in hand. */
export function whatNext(scene: Scene, kitchen: Kitchen): Outcome {
  const current = currentTask(scene, kitchen);
  const move = scene.sheet.ovenMoves.find(({ at }) => at > kitchen.now);
  const next = upcoming(scene.session, scene.sheet).find(({ task }) => task.id !== current?.id);
  if (next === undefined)
    return told(move === undefined ? "Nothing more after this. Then we eat." : heatThen(move, kitchen));
  if (move !== undefined && move.at < next.entry.start) return told(heatThen(move, kitchen));
  const { task, entry } = next;
  const when = entry.start <= kitchen.now ? "Next" : `Next, ${inTime(entry.start, kitchen)}`;
  return told(`${when}: ${taskName(task, scene.session.tasks)}.`);
}

const heatThen = (move: Scene["sheet"]["ovenMoves"][number], kitchen: Kitchen): string =>
  `Next, ${inTime(move.at, kitchen)}: set the ${move.oven} to ${spokenHeat(move.heat)}.`;

/** "Done": it answers whatever was called last, and the next call follows in the same breath. */
export function done(target: Mention | null, scene: Scene, kitchen: Kitchen): Outcome {
  if (target !== null) {
    return withTask(
      target,
      scene,
      kitchen,
      "finish",
      (by) => ({ type: "Done", target: by }),
      (task) => finished([task], scene, kitchen),
    );
  }
  const call = firstCall(scene, kitchen);
  if (call === null) return told("Nothing is waiting for you.");
  const looked = call.kind === "wait" || call.kind === "held" ? unnamed(scene, kitchen) : [];
  return looked.length > 0 ? finished(looked, scene, kitchen) : answered(call, scene, kitchen);
}

/** What can be "done" when nothing is called for the cook: what only one helper has in hand, or what was looked at. */
function unnamed(scene: Scene, kitchen: Kitchen): readonly Task[] {
  const handed = helperCalls(scene.session).flatMap((call) => (call.kind === "do" ? [call.task] : []));
  const looked = lookedAt(scene, kitchen);
  return looked.length === 0 && handed.length === 1 ? handed : looked;
}

/** The step whose ring was answered a while ago and that still runs. */
function lookedAt({ session }: Scene, kitchen: Kitchen): readonly Task[] {
  const past = [...session.timers.values()].filter(
    ({ run }) => run.state === "running" && run.lookAt <= kitchen.now,
  );
  return session.tasks.filter(({ id }) => past.some(({ task }) => task === id)).slice(0, 1);
}

/** What "done" means after each kind of call. */
function answered(call: Call, scene: Scene, kitchen: Kitchen): Outcome {
  switch (call.kind) {
    case "ring": {
      const task = scene.session.tasks.find((one) => one.id === call.timer.task);
      if (task !== undefined && isOpen(task, scene)) return finished([task], scene, kitchen);
      const { id, name } = call.timer;
      return ordered(kitchen, [{ type: "AnswerRing", timer: id }], (then) =>
        inOneBreath(`${capital(name)} is off.`, then, kitchen),
      );
    }
    case "attend":
      return ordered(
        kitchen,
        [{ type: "GiveAttention", task: call.task.id, moment: call.moment.key }],
        (then) => inOneBreath("Good.", then, kitchen),
      );
    case "heat":
      return ordered(kitchen, [{ type: "SetOven", oven: call.oven, heat: call.heat }], (then) =>
        inOneBreath(`${capital(call.oven)} at ${spokenHeat(call.heat)}.`, then, kitchen),
      );
    case "put-on":
      return started(call.task, kitchen);
    case "do":
    case "take-off":
      return finished([call.task], scene, kitchen);
    case "wait":
      return ordered(kitchen, [{ type: "Tick" }], (then) => sayNow(then, kitchen));
    case "serve":
    case "held":
    case "ended":
      return told(sayCall(call, scene.session, kitchen.now));
  }
}

/** These steps are over; what is next follows in the same breath. */
export function finished(tasks: readonly Task[], scene: Scene, kitchen: Kitchen): Outcome {
  const orders = tasks.map((task): Order => ({ type: "FinishTask", task: task.id }));
  const running = tasks.filter(
    (task) => task.step.hands === "off" && scene.session.progress.get(task.id)?.state === "running",
  );
  // A step in hand needs no echo; what came off the heat does, since the cook may have meant another.
  const isInHand = tasks.every((task) => scene.session.focus?.task === task.id) && running.length === 0;
  const titles = tasks.map((task) => task.step.title).join(", ");
  return ordered(kitchen, orders, (then) =>
    inOneBreath(isInHand ? "Good." : `Done: ${titles}.`, then, kitchen),
  );
}

/** An unattended step is set going. */
export function started(task: Task, kitchen: Kitchen): Outcome {
  return ordered(kitchen, [{ type: "StartTask", task: task.id }], (then) =>
    inOneBreath(`${capital(inProgress(task.step.title))}: ${spokenSpan(task.step.time)}.`, then, kitchen),
  );
}

/** What was done, then what is next. */
export function inOneBreath(before: string, then: Scene, kitchen: Kitchen): string {
  return `${before} ${sayNow(then, kitchen)}`.trim();
}

/** "It's in": sets an unattended step going. */
export function start(target: Mention | null, scene: Scene, kitchen: Kitchen): Outcome {
  if (target !== null) {
    return withTask(
      target,
      scene,
      kitchen,
      "start",
      (by) => ({ type: "Started", target: by }),
      (task) => started(task, kitchen),
    );
  }
  const call = firstCall(scene, kitchen);
  const { focus, tasks } = scene.session;
  const inFocus = tasks.find((task) => task.id === focus?.task);
  if (inFocus?.step.hands === "off") return started(inFocus, kitchen);
  if (call?.kind === "put-on") return started(call.task, kitchen);
  if (call?.kind === "heat") return answered(call, scene, kitchen);
  const handed = helperCalls(scene.session).find((one) => one.kind === "put-on");
  if (handed !== undefined) return started(handed.task, kitchen);
  if (inFocus !== undefined) return told(`Good. Say "done" when you have done this: ${inFocus.step.title}.`);
  return told(`Nothing is waiting to go on. ${sayNow(scene, kitchen)}`);
}

/** "Carrots first", "go to the carrots". */
export function choose(target: Mention, how: "GoTo" | "First", scene: Scene, kitchen: Kitchen): Outcome {
  return withTask(
    target,
    scene,
    kitchen,
    "choose",
    (by) => ({ type: how, target: by }),
    (task) => chosen(task, kitchen),
  );
}

/** The step before the cook from now on. */
export function chosen(task: Task, kitchen: Kitchen): Outcome {
  if (kitchen.log.session?.focus?.task === task.id) return told(`You are at it. ${sayStep(task)}`);
  return ordered(kitchen, [{ type: "ChooseTask", task: task.id }], () => sayStep(task));
}

/** Finds the step and goes on with it; asks which, or says what there is. */
export function withTask(
  target: Mention,
  scene: Scene,
  kitchen: Kitchen,
  purpose: Purpose,
  intent: (by: Mention) => Intent,
  go: (task: Task) => Outcome,
): Outcome {
  const hit: Found<Task> = findTask(target, scene, kitchen, purpose);
  switch (hit.kind) {
    case "one":
      return go(hit.value);
    case "several":
      return asksWhich(
        hit.values.map((task) => ({
          name: taskName(task, hit.values),
          intent: intent({ by: "task", task: task.id }),
        })),
      );
    case "none":
      return noSuchStep(wordsIn(target), scene);
  }
}

function noSuchStep(asked: string, scene: Scene): Outcome {
  const open = scene.session.tasks.filter((task) => isOpen(task, scene));
  const titles = [...new Set(open.map((task) => task.step.title))];
  return inParts(`There is no ${asked} in this meal. Still to do:`, titles);
}
