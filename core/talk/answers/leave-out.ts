import { leavingOf } from "../../cook/leave-out.ts";
import type { Leaving } from "../../cook/leave-out.ts";
import { sentence } from "../../cook/refusal.ts";
import { listed, shortName } from "../../cook/say-call.ts";
import { planInputOf } from "../../cook/run-sheet.ts";
import { isLate, withoutOne } from "../../plan/leave-out.ts";
import type { LeftOut } from "../../plan/leave-out.ts";
import type { Dish } from "../../recipe/model.ts";
import { spokenRoughly } from "../../units/duration.ts";
import { numberWords } from "../../units/number-words.ts";
import { asksWhich, findDish } from "../find.ts";
import type { Found } from "../find.ts";
import type { Mention } from "../intent.ts";
import type { Kitchen } from "../model.ts";
import { dishNames, titleNames } from "../names.ts";
import type { Consent, Outcome, Scene } from "../outcome.ts";
import { after, asksLeave, ordered, told } from "../outcome.ts";
import { capital } from "../../units/capital.ts";
import { clockAt, countWords, theDish } from "../speech.ts";
import { skip } from "./going-back.ts";
import { inOneBreath } from "./steps.ts";

const named = ({ dishes }: LeftOut): string => listed(dishes.map(theDish));

const offersOf = ({ session, sheet }: Scene, kitchen: Kitchen): readonly LeftOut[] =>
  session.phase.state === "ended" ? [] : withoutOne(planInputOf(session, kitchen.now), sheet);

/**
 * Without which dish a dinner that is late would be in time, or else when, and what to say for it: "Without the stew we
 * would make it: say "leave out the stew"." It only tells: whether a dish may be spared is the cook's to say. "" where no
 * dish would help, or there is no breath for it.
 * @param words how many it may take
 */
export function sayWithout(scene: Scene, kitchen: Kitchen, words: number): string {
  const [best, next] = offersOf(scene, kitchen);
  if (best === undefined) return "";
  const dish = named(best);
  const say = `"leave out ${dish}"`;
  const ready = clockAt(best.readyAt, kitchen);
  const other = next === undefined || isLate(next) ? null : named(next);
  const ways = isLate(best)
    ? [
        `Without ${dish} we could eat at ${ready}: say ${say}.`,
        `Say ${say} to eat at ${ready}.`,
        `Without ${dish}: ${ready}.`,
      ]
    : [
        ...(other === null ? [] : [`Say ${say} or "${other}" to make it.`]),
        `Without ${dish} we would make it: say ${say}.`,
        `Say ${say} to make it.`,
        `Without ${dish} we would make it.`,
      ];
  return ways.find((way) => countWords(way) <= words) ?? "";
}

const counted = (count: number, one: string): string =>
  count === 1 ? `one ${one}` : `${numberWords(count)} ${one}s`;

/** Whether something of it stands on the heat: it must come off. */
const isOnHeat = ({ tasks }: Leaving, { session }: Scene): boolean =>
  tasks.some(
    ({ id, step }) =>
      session.progress.get(id)?.state === "running" &&
      step.needs.some(({ kind }) => kind === "burner" || kind === "oven"),
  );

/** "Leave out the rice", once the cook has said yes to it: a dish, or else a step of that name. */
export function leaveOut(target: Mention, scene: Scene, kitchen: Kitchen, consent: Consent): Outcome {
  const hit = findDish(target, scene.session);
  if (hit.kind === "none" || !isNamed(target, hit, scene)) return skip(target, scene, kitchen, consent);
  if (hit.kind === "several")
    return asksWhich(
      hit.values.map((dish) => ({
        name: shortName(dish),
        intent: { type: "LeaveOut", target: { by: "dish", dish: dish.id } },
      })),
    );
  const dish = hit.value;
  const order = { type: "LeaveOutDish", dish: dish.id } as const;
  // Tried before it is asked: what cannot be is not asked about.
  const tried = after(kitchen, [order]);
  if (!tried.ok) return told(sentence(tried.error));
  const leaving = leavingOf(dish.id, scene.session);
  const off = isOnHeat(leaving, scene);
  if (consent === "wanted") {
    const { tasks, timers } = leaving;
    const clocks = timers.length === 0 ? "" : ` and ${counted(timers.length, "timer")}`;
    const go = tasks.length + timers.length === 1 ? "goes" : "go";
    const heat = off ? " What is on the heat comes off." : "";
    const prompt = `Leave out ${theDish(dish)}? ${capital(counted(tasks.length, "step"))}${clocks} ${go}.${heat} Say yes.`;
    return asksLeave({ type: "LeaveOut", target: { by: "dish", dish: dish.id } }, prompt);
  }
  const done = `Left out: ${theDish(dish)}.${off ? " Take it off the heat." : ""}`;
  return ordered(kitchen, [order], (then) => inOneBreath(done, then, kitchen));
}

/** A step of that very name goes before a dish in whose name the words only stand. */
function isNamed(target: Mention, hit: Found<Dish>, { session }: Scene): boolean {
  if (target.by !== "words" || hit.kind === "none") return true;
  const dishes = hit.kind === "one" ? [hit.value] : hit.values;
  if (dishes.some((dish) => dishNames(dish, session.meal).includes(target.words))) return true;
  return !session.tasks.some(({ step }) => titleNames(step.title).includes(target.words));
}

/** What goes behind how late it is: "or in time without the stew", "or ten minutes"; null where no dish would help. */
export function lateWithout(scene: Scene, kitchen: Kitchen): string | null {
  const [best] = offersOf(scene, kitchen);
  if (best === undefined) return null;
  return `or ${isLate(best) ? spokenRoughly(best.late) : "in time"} without ${named(best)}`;
}
