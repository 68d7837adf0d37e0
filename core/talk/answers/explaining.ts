import { planInputOf } from "../../cook/run-sheet.ts";
import { sayCall } from "../../cook/say-call.ts";
import { bindingsOf, boundBy, criticalChain } from "../../plan/critical-chain.ts";
import type { Binding } from "../../plan/critical-chain.ts";
import type { PlanInput, RunSheet, Task } from "../../plan/model.ts";
import { plan } from "../../plan/plan.ts";
import { spokenDuration, spokenRoughly } from "../../units/duration.ts";
import type { Instant } from "../../units/quantity.ts";
import { between, hours } from "../../units/quantity.ts";
import type { Bound } from "../binding-words.ts";
import { bindingWords } from "../binding-words.ts";
import type { Call } from "../../cook/calls.ts";
import type { Mention } from "../intent.ts";
import type { Kitchen } from "../model.ts";
import { inProgress } from "../names.ts";
import type { Outcome, Scene } from "../outcome.ts";
import { asksFor, told } from "../outcome.ts";
import { capital } from "../../units/capital.ts";
import { clockAt, firstCall, inBreath, inTime, sayNow, theDish } from "../speech.ts";
import { withTask } from "./steps.ts";

/** Less than this to spare is nothing to spare, in seconds. */
const spare = 120;

/** The step on the sheet with what binds it; null where the sheet has not got it. */
function boundOf(task: Task, input: PlanInput, sheet: RunSheet): Bound | null {
  const entry = sheet.entries.find((one) => one.task === task.id);
  const binding = bindingsOf(input, sheet).get(task.id);
  return entry === undefined || binding === undefined ? null : { task, entry, binding };
}

/** "Why not start the rice?": what it waits for, or why later is better. */
export function whyNotYet(target: Mention | null, scene: Scene, kitchen: Kitchen): Outcome {
  if (target === null) return asksFor({ type: "WhyNotYet", target: null }, "Start what?");
  return withTask(
    target,
    scene,
    kitchen,
    "choose",
    (by) => ({ type: "WhyNotYet", target: by }),
    (task) => told(waiting(task, scene, kitchen)),
  );
}

function waiting(task: Task, scene: Scene, kitchen: Kitchen): string {
  const { session, sheet } = scene;
  const progress = session.progress.get(task.id);
  const title = capital(task.step.title);
  if (progress?.state === "done") return `That is done: ${task.step.title}.`;
  if (progress?.state === "skipped") return `That was left out: ${task.step.title}.`;
  if (progress?.state === "running") {
    return task.step.hands === "on"
      ? `You are at it: ${task.step.title}.`
      : `It has been going since ${clockAt(progress.startedAt, kitchen)}: ${task.step.title}.`;
  }
  const bound = boundOf(task, planInputOf(session, kitchen.now), sheet);
  if (bound === null) return `The plan says nothing of this: ${task.step.title}.`;
  const { binding, entry } = bound;
  if (binding.kind === "free") return freely(bound, binding, kitchen);
  const words = bindingWords(bound, session.tasks, spokenRoughly);
  return inBreath([
    `${title}, ${when(entry.start, kitchen)}: it ${words}.`,
    ...details(bound, scene, kitchen),
  ]);
}

/** When it is to start: soon things from now, the others by the clock. */
const when = (start: Instant, kitchen: Kitchen): string =>
  between(kitchen.now, start) < hours(1) ? inTime(start, kitchen) : `at ${clockAt(start, kitchen)}`;

/** A step that nothing holds where it is: how soon it could begin, and how much later. */
function freely(
  { task, entry }: Bound,
  binding: Extract<Binding, { readonly kind: "free" }>,
  kitchen: Kitchen,
): string {
  const soonest = between(kitchen.now, binding.from) < 60 ? "now" : `at ${clockAt(binding.from, kitchen)}`;
  const later = binding.slack < spare ? "" : `, or ${spokenRoughly(binding.slack)} later than planned`;
  return inBreath([
    `${capital(task.step.title)}, ${when(entry.start, kitchen)}: it could start ${soonest}${later}.`,
    ...keeping(binding.next),
  ]);
}

/** Why what keeps only so long does not begin sooner. */
function keeping({ kind }: Binding): readonly string[] {
  if (kind === "hot") return ["Any sooner, and it would not stay hot."];
  return kind === "fresh" || kind === "ahead" ? ["Any sooner, and it would not keep."] : [];
}

/** Who holds what it waits for, or for what it must keep. */
function details({ task, entry, binding }: Bound, scene: Scene, kitchen: Kitchen): readonly string[] {
  const { session, sheet } = scene;
  const other = session.tasks.find(({ id }) => id === boundBy(binding));
  switch (binding.kind) {
    case "hands":
      return other === undefined ? [] : [before(other)];
    case "thing":
    case "rack":
    case "heat": {
      if (other === undefined) return ["It has to come to its heat."];
      const who = other.dish.id === task.dish.id ? "Another step" : capital(theDish(other.dish));
      return [`${who} has it first.`];
    }
    case "hot":
    case "fresh":
    case "ahead":
      return [`Everything is ready at ${clockAt(sheet.readyAt, kitchen)}.`];
    case "now":
    case "after":
      return entry.slack < spare ? [] : [`It could wait ${spokenRoughly(entry.slack)} longer.`];
    case "soon":
    case "wish":
    case "begun":
    case "free":
      return [];
  }
}

/** What has the cook's hands first; what runs by itself has them for a minute. */
const before = ({ step }: Task): string =>
  step.hands === "on"
    ? `Before that you are ${inProgress(step.title)}.`
    : `Before that you set this going: ${step.title}.`;

/** "Why now?": what the step before the cook is wanted for, and whether dinner hangs on it. */
export function whyNow(scene: Scene, kitchen: Kitchen): Outcome {
  const call = firstCall(scene, kitchen);
  return told(call === null ? "Nothing is waiting for you." : reasonFor(call, scene, kitchen));
}

function reasonFor(call: Call, scene: Scene, kitchen: Kitchen): string {
  switch (call.kind) {
    case "ring":
      return call.ring === "look"
        ? `Because it may be done by now: ${call.timer.name}.`
        : `Because its time is up: ${call.timer.name}.`;
    case "take-off":
      return `Because it has had its time: ${call.task.step.title}.`;
    case "attend": {
      const { within } = call.moment;
      const wait = within < 30 ? "it cannot wait" : `it can wait ${spokenDuration(within)} at most`;
      return `Because ${theDish(call.task.dish)} is on, and ${wait}.`;
    }
    case "heat":
      return heating(call, scene, kitchen);
    case "put-on":
    case "do":
      return reasonForStep(call.task, scene, kitchen);
    case "wait":
      return call.next === null
        ? "Nothing is for your hands now: what is on goes on by itself."
        : waiting(call.next, scene, kitchen);
    case "serve":
      return "Because everything is ready, and hot food is best at once.";
    case "held":
      return sayCall(call, scene.session, kitchen.now);
    case "ended":
      return sayNow(scene, kitchen);
  }
}

function heating(call: Extract<Call, { readonly kind: "heat" }>, { sheet }: Scene, kitchen: Kitchen): string {
  const move = sheet.ovenMoves.find((turn) => turn.oven === call.oven && turn.at === call.at);
  const [first] = call.for;
  if (move === undefined || first === undefined) return `Because the ${call.oven} is wanted hot.`;
  const takes = spokenRoughly(between(move.at, move.readyAt));
  return `Because the ${call.oven} takes ${takes} to get there, and ${theDish(first.dish)} goes in at ${clockAt(move.readyAt, kitchen)}.`;
}

/**
 * The sheet as if a step in hand had not begun: what runs has no slack and no reason, and the cook asks just then
 * what it is for.
 */
function beforeBegun(task: Task, scene: Scene, kitchen: Kitchen): readonly [PlanInput, RunSheet] {
  const input = planInputOf(scene.session, kitchen.now);
  if (input.progress.get(task.id)?.state !== "running") return [input, scene.sheet];
  const unbegun = {
    ...input,
    progress: new Map([...input.progress, [task.id, { state: "waiting" }] as const]),
  };
  return [unbegun, plan(unbegun)];
}

function reasonForStep(task: Task, scene: Scene, kitchen: Kitchen): string {
  const { session } = scene;
  if (session.wishes.includes(task.id)) return "Because you asked for it first.";
  const follows = task.after.find((link) => {
    return link.atMost !== null && session.progress.get(link.task)?.state === "done";
  });
  const before = session.tasks.find(({ id }) => id === follows?.task);
  if (before !== undefined && follows !== undefined && follows.atMost !== null) {
    const within = follows.atMost === 0 ? "at once" : `within ${spokenDuration(follows.atMost)}`;
    return `Because it must follow ${inProgress(before.step.title)} ${within}.`;
  }
  const [input, sheet] = beforeBegun(task, scene, kitchen);
  const bound = boundOf(task, input, sheet);
  if (bound === null) return "It is next on the plan.";
  return dinnerWaits(task, input, sheet) ?? otherReason(bound, input.tasks);
}

/** What comes next on the chain that dinner waits for; null where the step is not on it or has time to spare. */
function dinnerWaits(task: Task, input: PlanInput, sheet: RunSheet): string | null {
  const slack = sheet.entries.find((entry) => entry.task === task.id)?.slack ?? 0;
  const chain = criticalChain(input, sheet);
  if (slack >= spare || !chain.includes(task.id)) return null;
  const bindings = bindingsOf(input, sheet);
  const next = chain.find((id) => {
    const binding = bindings.get(id);
    return binding !== undefined && binding.kind !== "soon" && boundBy(binding) === task.id;
  });
  const follower = input.tasks.find(({ id }) => id === next);
  const binding = next === undefined ? undefined : bindings.get(next);
  if (follower === undefined || binding === undefined)
    return "Because dinner waits for this step: nothing ends later.";
  const what = whatFor(binding, inProgress(follower.step.title));
  return `Because ${what}, and dinner waits for that.`;
}

function otherReason({ task, entry, binding }: Bound, tasks: readonly Task[]): string {
  if (binding.kind === "hot") return "Because any sooner it would not stay hot.";
  if (binding.kind === "fresh" || binding.kind === "ahead") return "Because any sooner it would not keep.";
  if (entry.slack >= spare) {
    const why =
      task.step.hands === "on" ? "but your hands are free now" : "but it runs by itself once it is on";
    return `It could wait ${spokenRoughly(entry.slack)}, ${why}.`;
  }
  const follower = tasks.find(({ after }) => after.some((link) => link.task === task.id));
  return follower === undefined
    ? "Because it has no time to spare."
    : `Because ${inProgress(follower.step.title)} comes after it, and there is no time to spare.`;
}

/** What a step is wanted for, by what binds the one that comes `next` after it. */
function whatFor(binding: Binding, next: string): string {
  if (binding.kind === "hands") return `you are needed next for ${next}`;
  if (binding.kind === "thing") return `the ${binding.thing} is needed next for ${next}`;
  return binding.kind === "rack" || binding.kind === "heat"
    ? `the ${binding.oven} is needed next for ${next}`
    : `${next} comes right after it`;
}
