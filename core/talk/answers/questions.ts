import type { Task } from "../../plan/model.ts";
import { spokenRoughly, spokenSpan } from "../../units/duration.ts";
import { numberWords } from "../../units/number-words.ts";
import { between, seconds } from "../../units/quantity.ts";
import { compareHeat, spokenHeat } from "../../units/temperature.ts";
import { listed } from "../../cook/say-call.ts";
import { findDish, wordsIn } from "../find.ts";
import { bySheet, currentTask, isOpen } from "../find-task.ts";
import type { Mention } from "../intent.ts";
import type { Kitchen } from "../model.ts";
import type { Outcome, Scene } from "../outcome.ts";
import { asksFor, told } from "../outcome.ts";
import { capital } from "../../units/capital.ts";
import { breathWords, clockAt, countWords, inParts, inTime, lateWords, theDish } from "../speech.ts";
import { withTask } from "./steps.ts";

const openTasks = (scene: Scene): readonly Task[] =>
  bySheet(
    scene.session.tasks.filter((task) => isOpen(task, scene)),
    scene,
  );

const counted = (count: number, one: string): string =>
  `${numberWords(count)} ${one}${count === 1 ? "" : "s"}`;

/** All that is left: a count for each dish, since nobody keeps twenty titles in mind. */
export function whatIsLeft(scene: Scene, kitchen: Kitchen): Outcome {
  const open = openTasks(scene);
  if (open.length === 0) return told("Nothing is left to do. Sit down and eat.");
  const dishes = scene.session.meal.dishes.flatMap((dish) => {
    const count = open.filter((task) => task.dish.id === dish.id).length;
    return count === 0 ? [] : [`${numberWords(count)} for ${theDish(dish)}`];
  });
  const full = `${capital(counted(open.length, "step"))}: ${listed(dishes)}. Ready about ${clockAt(scene.sheet.readyAt, kitchen)}.`;
  if (countWords(full) <= breathWords) return told(full);
  return inParts(`${capital(counted(open.length, "step"))}:`, dishes);
}

/** What is left of one dish, in the order of the run sheet. */
export function whatIsLeftFor(mention: Mention | null, scene: Scene): Outcome {
  if (mention === null) return asksFor({ type: "WhatIsLeftFor", dish: null }, "Of which dish?");
  const hit = findDish(mention, scene.session);
  const dishes = scene.session.meal.dishes.map(theDish);
  if (hit.kind === "none")
    return told(`There is no ${wordsIn(mention)} in this meal. We have ${listed(dishes)}.`);
  const ids = hit.kind === "one" ? [hit.value.id] : hit.values.map(({ id }) => id);
  const open = openTasks(scene).filter(({ dish }) => ids.includes(dish.id));
  const lead = hit.kind === "one" ? capital(theDish(hit.value)) : "These";
  if (open.length === 0) return told(`${lead}: all done.`);
  return inParts(`${lead}:`, titlesOf(open, scene));
}

/** What the cook has to do by hand, in order. */
export function whatIsLeftForHands(scene: Scene): Outcome {
  const open = openTasks(scene).filter(({ step }) => step.hands === "on");
  if (open.length === 0) return told("Nothing more for your hands.");
  return inParts("For your hands:", titlesOf(open, scene));
}

/** Titles, batches of one step in one, running ones marked. */
function titlesOf(tasks: readonly Task[], { session }: Scene): readonly string[] {
  const titles = [...new Set(tasks.map(({ step }) => step.title))];
  return titles.map((title) => {
    const isGoing = tasks.some(
      ({ id, step }) =>
        step.title === title && step.hands === "off" && session.progress.get(id)?.state === "running",
    );
    return isGoing ? `${title}, going now` : title;
  });
}

/** How to tell that a step is done: its cue, its time, and how long it has had. */
export function howDone(target: Mention | null, scene: Scene, kitchen: Kitchen): Outcome {
  if (target !== null) {
    return withTask(
      target,
      scene,
      kitchen,
      "ask",
      (by) => ({ type: "HowDone", target: by }),
      (task) => told(cueOf(task, scene, kitchen)),
    );
  }
  const running = scene.session.tasks.filter(
    ({ id, step }) => step.hands === "off" && scene.session.progress.get(id)?.state === "running",
  );
  const current = currentTask(scene, kitchen);
  const task = current?.step.until === null && running.length === 1 ? running[0] : (current ?? running[0]);
  return told(task === undefined ? "Nothing is cooking yet." : cueOf(task, scene, kitchen));
}

function cueOf({ id, step }: Task, { session }: Scene, kitchen: Kitchen): string {
  const progress = session.progress.get(id);
  const had = progress?.state === "running" ? between(progress.startedAt, kitchen.now) : seconds(0);
  const soFar = had >= 60 ? `, ${spokenRoughly(had)} so far` : "";
  const time = `${capital(spokenSpan(step.time))}${soFar}.`;
  return step.until === null
    ? `The time tells: ${spokenSpan(step.time)}${soFar}.`
    : `Done when ${step.until}. ${time}`;
}

/** What each oven holds, and at what heat. */
export function inOven({ session, sheet }: Scene, kitchen: Kitchen): Outcome {
  const lines = session.ovens.map(({ oven, heat }) => {
    const inside = session.tasks.filter(({ id, step }) => {
      const isRunning = session.progress.get(id)?.state === "running";
      const lanes = sheet.entries.find(({ task }) => task === id)?.lanes ?? [];
      const isHere = session.ovens.length === 1 || lanes.some((lane) => lane.startsWith(oven));
      return isRunning && isHere && step.needs.some(({ kind }) => kind === "oven");
    });
    const at = heat === null ? "is off" : `is at ${spokenHeat(heat)}`;
    if (inside.length === 0) return `The ${oven} ${at} and empty.`;
    const what = inside.map(({ id, dish, step }) => {
      const look = sheet.entries.find(({ task }) => task === id)?.look ?? kitchen.now;
      const when = look > kitchen.now ? `a look ${inTime(look, kitchen)}` : "ready for a look";
      return `${inside.length > 1 ? theDish(dish) : step.title}, ${when}`;
    });
    return `The ${oven} ${at}: ${listed(what)}.`;
  });
  return lines.length === 0 ? told("There is no oven in this kitchen.") : told(lines.join(" "));
}

/** The next oven heat that will be wanted. */
export function heatNext({ session, sheet }: Scene, kitchen: Kitchen): Outcome {
  const move = sheet.ovenMoves.find(({ oven, heat, readyAt }) => {
    const now = session.ovens.find((one) => one.oven === oven)?.heat ?? null;
    return readyAt >= kitchen.now - 60_000 && (now === null || compareHeat(now, heat) !== 0);
  });
  if (move === undefined) {
    const hot = session.ovens.flatMap(({ heat }) => (heat === null ? [] : [heat]))[0];
    return told(
      hot === undefined ? "No oven heat is needed any more." : `No change: ${spokenHeat(hot)} stays.`,
    );
  }
  const dishes = [
    ...new Set(session.tasks.filter(({ id }) => move.for.includes(id)).map(({ dish }) => theDish(dish))),
  ];
  const what = dishes.length === 0 ? "" : `, for ${listed(dishes)}`;
  return told(`${capital(spokenHeat(move.heat))}, ${inTime(move.at, kitchen)}${what}.`);
}

/** When everything can be on the table. */
export function whenDoWeEat({ session, sheet }: Scene, kitchen: Kitchen): Outcome {
  const ready = clockAt(sheet.readyAt, kitchen);
  const { serveAt } = session;
  if (serveAt === null) return told(`About ${ready}, ${inTime(sheet.readyAt, kitchen)}.`);
  if (sheet.late > 60) return told(`Planned for ${clockAt(serveAt, kitchen)}, but more like ${ready}.`);
  return told(`At ${clockAt(serveAt, kitchen)}, ${inTime(serveAt, kitchen)}.`);
}

/** Whether the evening will be on time, and the first limit that it cannot keep. */
export function areWeLate(scene: Scene, kitchen: Kitchen): Outcome {
  const { session, sheet } = scene;
  const ready = clockAt(sheet.readyAt, kitchen);
  const [broken] = sheet.broken;
  const by = spokenRoughly(sheet.late).replace(/^about /, "");
  const verdict =
    session.serveAt === null
      ? `We set no time. Everything is ready about ${ready}.`
      : sheet.late > 60
        ? lateWords(`Yes, by about ${by}: ready at ${ready}.`, scene, kitchen)
        : `No, we are on time for ${clockAt(session.serveAt, kitchen)}.`;
  const full = broken === undefined ? verdict : `${verdict} ${broken}`;
  return told(countWords(full) <= breathWords ? full : verdict);
}
