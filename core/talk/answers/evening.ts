import type { Order } from "../../cook/orders.ts";
import { spokenHeat } from "../../units/temperature.ts";
import type { Heat } from "../../units/temperature.ts";
import { spokenRoughly } from "../../units/duration.ts";
import { numberWords } from "../../units/number-words.ts";
import { hours, instant, minutes, plus } from "../../units/quantity.ts";
import type { Instant, Seconds } from "../../units/quantity.ts";
import { minuteOfDay } from "../minute-of-day.ts";
import type { Kitchen } from "../model.ts";
import type { Consent, Outcome, Scene } from "../outcome.ts";
import { asksFor, asksLeave, ordered, told } from "../outcome.ts";
import { capital } from "../../units/capital.ts";
import { clockAt, firstCall, lateWords, sayNow } from "../speech.ts";
import { isOpen } from "../find-task.ts";
import { inOneBreath } from "./steps.ts";

/** No new calls until the cook is back; what is on the heat goes on. */
export function hold(scene: Scene, kitchen: Kitchen): Outcome {
  const running = [...scene.session.timers.values()].some((timer) => timer.run.state === "running");
  const rest = running ? "What is on the heat goes on, and its timers ring." : "Take your time.";
  return ordered(
    kitchen,
    [{ type: "HoldEverything" }],
    () => `On hold. ${rest} Say "go on" when you are back.`,
  );
}

/** Calls again; where nothing was held, a paused timer may be what was meant. */
export function goOn(scene: Scene, kitchen: Kitchen): Outcome {
  if (scene.session.phase.state === "held") {
    return ordered(kitchen, [{ type: "GoOn" }], (then) => inOneBreath("Welcome back.", then, kitchen));
  }
  const paused = [...scene.session.timers.values()].filter((timer) => timer.run.state === "paused");
  const [only] = paused;
  if (only !== undefined && paused.length === 1) {
    return ordered(
      kitchen,
      [{ type: "ResumeTimer", timer: only.id }],
      () => `${capital(only.name)} runs again.`,
    );
  }
  return ordered(kitchen, [{ type: "Tick" }], (then) => sayNow(then, kitchen));
}

/** Ends the evening, once the cook has said yes to it. */
export function endMeal(scene: Scene, kitchen: Kitchen, consent: Consent): Outcome {
  const open = scene.session.tasks.filter((task) => isOpen(task, scene)).length;
  if (consent === "given") {
    const over = open === 0 ? "The meal is over. Well cooked, and enjoy it." : "The meal is over.";
    return ordered(kitchen, [{ type: "EndMeal" }], () => over);
  }
  const left =
    open === 0
      ? ""
      : ` ${open === 1 ? "One step is" : `${capital(numberWords(open))} steps are`} still open.`;
  return asksLeave({ type: "EndMeal" }, `End the meal?${left}`);
}

/** "The oven is at 365". Without a figure it is the heat that was called for. */
export function ovenAt(said: Heat | null, scene: Scene, kitchen: Kitchen): Outcome {
  const call = firstCall(scene, kitchen);
  const wanted = call?.kind === "heat" ? call : null;
  const oven = wanted?.oven ?? scene.session.ovens[0]?.oven;
  if (oven === undefined) return told("There is no oven in this kitchen.");
  const heat = said ?? wanted?.heat ?? scene.sheet.ovenMoves[0]?.heat ?? null;
  if (heat === null) return asksFor({ type: "OvenAt", heat: null }, "At what heat?");
  return setOven(oven, heat, scene, kitchen);
}

function setOven(oven: string, heat: Heat, scene: Scene, kitchen: Kitchen): Outcome {
  const hottest = scene.session.meal.kitchen.ovens.find((one) => one.name === oven)?.hottest;
  // A misheard figure ("nine sixty five") would plan the evening round a heat that cannot be.
  if (hottest !== undefined && hottest.scale === heat.scale && heat.degrees > hottest.degrees) {
    return told(`The ${oven} goes up to ${spokenHeat(hottest)}. What is it at?`);
  }
  return ordered(kitchen, [{ type: "SetOven", oven, heat }], (then) =>
    inOneBreath(`${capital(oven)} at ${spokenHeat(heat)}.`, then, kitchen),
  );
}

/** "The oven is off". */
export function ovenOff(scene: Scene, kitchen: Kitchen): Outcome {
  const oven = scene.session.ovens.find((one) => one.heat !== null)?.oven ?? scene.session.ovens[0]?.oven;
  if (oven === undefined) return told("There is no oven in this kitchen.");
  return ordered(kitchen, [{ type: "SetOven", oven, heat: null }], () => `${capital(oven)} off.`);
}

/**
 * The next time the kitchen's clock shows this minute of the day, also where the clocks are changed on the way: who
 * says "seven" means what the clock on the wall will show. A minute that is skipped that night comes when it would have.
 */
export function nextAt(minute: number, kitchen: Pick<Kitchen, "now" | "utcOffsetMinutes">): Instant {
  const { now, utcOffsetMinutes } = kitchen;
  const from = instant(Math.floor(now / 60_000) * 60_000);
  const next = (offset: number): Instant => {
    const away = minute - minuteOfDay({ now, utcOffsetMinutes: () => offset });
    return plus(from, minutes((away + 1440) % 1440));
  };
  const asNow = next(utcOffsetMinutes(now));
  const asThen = next(utcOffsetMinutes(plus(now, hours(24))));
  const shown = [asNow, asThen].filter((at) => minuteOfDay({ now: at, utcOffsetMinutes }) === minute);
  return shown.toSorted((a, b) => a - b)[0] ?? asNow;
}

/** "We eat at seven". */
export function serveAt(minute: number | null, kitchen: Kitchen): Outcome {
  if (minute === null) return asksFor({ type: "ServeAt", minute: null }, "At what time do we eat?");
  return setServing(nextAt(minute, kitchen), kitchen);
}

/** "We eat in an hour". */
export function serveIn(length: Seconds, kitchen: Kitchen): Outcome {
  const exact = plus(kitchen.now, length);
  return setServing(instant(Math.round(exact / 60_000) * 60_000), kitchen);
}

/** As soon as it can be ready. */
export function serveSoonest(kitchen: Kitchen): Outcome {
  const order: Order = { type: "SetServing", serveAt: null };
  return ordered(
    kitchen,
    [order],
    ({ sheet }) => `As soon as it is ready: about ${clockAt(sheet.readyAt, kitchen)}.`,
  );
}

function setServing(serve: Instant, kitchen: Kitchen): Outcome {
  return ordered(kitchen, [{ type: "SetServing", serveAt: serve }], (then) => {
    const time = capital(clockAt(serve, kitchen));
    if (then.sheet.late <= 60) return `${time} it is. We can make that.`;
    const late = `we will be ${spokenRoughly(then.sheet.late)} late.`;
    return lateWords(`${time} it is, but that is tight: ${late}`, then, kitchen);
  });
}

/** Where the evening stands, for a cook who has lost the thread. */
export function whereWasI(scene: Scene, kitchen: Kitchen): Outcome {
  const { session } = scene;
  const over = session.tasks.flatMap((task) => {
    const progress = session.progress.get(task.id);
    return progress?.state === "done" ? [{ task, at: progress.at }] : [];
  });
  const last = over.toSorted((a, b) => b.at - a.at)[0];
  const before = last === undefined ? "We have just begun." : `Last done: ${last.task.step.title}.`;
  return ordered(kitchen, session.phase.state === "ended" ? [] : [{ type: "Tick" }], (then) =>
    inOneBreath(before, then, kitchen),
  );
}

/** An intent that needs a running meal, given without one. */
export const noMeal = (): Outcome => told("No meal is on. Choose one on the first page, and we begin.");
