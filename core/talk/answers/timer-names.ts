import type { Session, Timer } from "../../cook/session.ts";
import { ringOf } from "../../cook/timer.ts";
import { numberWords } from "../../units/number-words.ts";
import type { DishId } from "../../recipe/model.ts";
import type { Found } from "../find.ts";
import { asksWhich, dishOfTimer, findDish, findTimer } from "../find.ts";
import { findTask } from "../find-task.ts";
import type { Intent, Mention } from "../intent.ts";
import type { Kitchen } from "../model.ts";
import { ordinals } from "../names.ts";
import type { Outcome, Scene } from "../outcome.ts";
import { told } from "../outcome.ts";
import { breathWords, countWords, inParts, sayTimeLeft, theDish } from "../speech.ts";
import { shortName } from "../../cook/say-call.ts";
import { nameWords } from "../utterance.ts";

/** What a new timer is called, and the dish it belongs to. */
export interface TimerName {
  readonly name: string | null;
  readonly dish: DishId | null;
}

/** The name for a new timer: a dish's or a step's own where the words mean one, else the words as they are. */
export function nameFor(mention: Mention | null, scene: Scene, kitchen: Kitchen): TimerName {
  if (mention === null) return { name: null, dish: null };
  const dish = findDish(mention, scene.session);
  if (dish.kind === "one") return { name: shortName(dish.value).toLowerCase(), dish: dish.value.id };
  if (mention.by !== "words") return { name: null, dish: null };
  const task = findTask(mention, scene, kitchen, "ask");
  const isTitle = task.kind === "one" && nameWords(task.value.step.title).join(" ") === mention.words;
  return task.kind === "one"
    ? { name: isTitle ? task.value.step.title : mention.words, dish: task.value.dish.id }
    : { name: mention.words, dish: null };
}

/** A timer as it is told apart from others: by name, else by dish, else by number. */
export function timerLabel(timer: Timer, session: Session): string {
  const namesakes = [...session.timers.values()].filter(({ name }) => name === timer.name);
  if (namesakes.length < 2)
    return timer.name.replace(/\b\d{1,4}\b/g, (figure) => numberWords(Number(figure)));
  const dish = dishOfTimer(timer, session);
  const isAlone = namesakes.filter((other) => other.dish === timer.dish).length === 1;
  if (dish !== null && isAlone && nameWords(shortName(dish)).join(" ") !== nameWords(timer.name).join(" ")) {
    return `${timer.name} for ${theDish(dish)}`;
  }
  return `${ordinals[namesakes.indexOf(timer)] ?? "last"} ${timer.name}`;
}

/** "the flatbreads"; a timer named after what is done ("roast the squash") or by number keeps its name bare. */
export function theTimer(timer: Timer, session: Session): string {
  const label = timerLabel(timer, session);
  return isBare(label, session) ? label : `the ${label}`;
}

const isBare = (label: string, session: Session): boolean =>
  /^timer \w/.test(label) || /\bthe\b/.test(label) || session.tasks.some(({ step }) => step.title === label);

/** "for the flatbreads", or "for this: roast the squash" where the timer is named after what is done. */
export function forTimer(timer: Timer, session: Session): string {
  const label = timerLabel(timer, session);
  if (!isBare(label, session)) return ` for the ${label}`;
  return /^timer \w/.test(label) ? ` on ${label}` : ` for this: ${label}`;
}

/** Finds the timer and goes on with it; asks which, or says what timers there are. */
export function withTimer(
  mention: Mention | null,
  scene: Scene,
  kitchen: Kitchen,
  fits: (timer: Timer) => boolean,
  intent: (by: Mention) => Intent,
  go: (timer: Timer) => Outcome,
): Outcome {
  const hit: Found<Timer> = findTimer(mention, scene.session, kitchen.now, fits);
  switch (hit.kind) {
    case "one":
      return go(hit.value);
    case "several":
      return asksWhich(
        hit.values.map((timer) => ({
          name: timerLabel(timer, scene.session),
          intent: intent({ by: "timer", timer: timer.id }),
        })),
        "Which timer",
      );
    case "none":
      return noSuchTimer(hit.asked, scene, kitchen);
  }
}

/** Timers that still count or stand still, the next to ring first. */
export function openTimers(session: Session): readonly Timer[] {
  const endOf = ({ run }: Timer): number => (run.state === "running" ? run.lookAt : Infinity);
  return [...session.timers.values()]
    .filter(({ run }) => run.state !== "stopped")
    .toSorted((a, b) => endOf(a) - endOf(b) || 0);
}

function noSuchTimer(asked: string, scene: Scene, kitchen: Kitchen): Outcome {
  const open = openTimers(scene.session);
  if (open.length === 0)
    return told(
      asked === ""
        ? `No timer is on. Say "set a timer for ten minutes".`
        : `There is no ${asked} timer; none is on.`,
    );
  const lead = asked === "" ? "None fits that. There is" : `There is no ${asked} timer. There is`;
  const names = open.map((timer) => timerLabel(timer, scene.session));
  const timed = open.map((timer, index) => `${names[index] ?? ""}, ${sayTimeLeft(timer, kitchen)}`);
  // A long name with a long time would leave no breath to ask whether to go on.
  const isShort = countWords(`${lead} ${timed[0] ?? ""}`) < breathWords;
  return inParts(lead, isShort ? timed : names);
}

/** Whether a timer rings now. */
export const isRinging = (timer: Timer, kitchen: Kitchen): boolean => ringOf(timer, kitchen.now) !== null;
