import { listed } from "../../cook/say-call.ts";
import type { Task } from "../../plan/model.ts";
import { wayBecause } from "../../plan/way-words.ts";
import type { Ways } from "../../recipe/model.ts";
import { asksWhich } from "../find.ts";
import { bySheet, taskName } from "../find-task.ts";
import type { IntentOf, Mention } from "../intent.ts";
import type { Kitchen } from "../model.ts";
import { dishNames, titleNames, wayNames } from "../names.ts";
import type { Outcome, Scene } from "../outcome.ts";
import { ordered, told } from "../outcome.ts";
import { capital } from "../../units/capital.ts";
import { clockAt } from "../speech.ts";
import { inOneBreath } from "./steps.ts";

/** A step, by its first task, and the way of it that was named. */
interface Named {
  readonly task: Task;
  readonly ways: Ways;
  readonly way: string;
}

/** The steps that have a way of this name; the one before the cook first, then as the run sheet has them. */
function stepsWith(said: string, scene: Scene): readonly Named[] {
  const { tasks, focus } = scene.session;
  const firsts = tasks.filter(({ batch }) => batch === null || batch.number === 1);
  const named = bySheet(firsts, scene).flatMap((task): readonly Named[] => {
    const { ways } = task.step;
    const way = ways?.all.find(({ name }) => wayNames(name).includes(said));
    return ways === null || way === undefined ? [] : [{ task, ways, way: way.name }];
  });
  return named.toSorted((a, b) => Number(b.task.id === focus?.task) - Number(a.task.id === focus?.task));
}

function isMeant(task: Task, target: Mention | null, { meal, tasks }: Scene["session"]): boolean {
  if (target === null) return true;
  if (target.by === "task") {
    const named = tasks.find(({ id }) => id === target.task);
    return named?.dish.id === task.dish.id && named.step.id === task.step.id;
  }
  if (target.by !== "words") return false;
  return [...dishNames(task.dish, meal), ...titleNames(task.step.title)].includes(target.words);
}

function noSuchWay(said: string, { session }: Scene): Outcome {
  const all = session.tasks.flatMap(({ step }) => step.ways?.all.map(({ name }) => name) ?? []);
  const known = [...new Set(all)].slice(0, 5);
  return told(
    known.length === 0
      ? "The recipes name one way for each step."
      : `The recipes know no ${said}. They know ${listed(known)}.`,
  );
}

/** "Do the patties in a pan": done so from now on, and when dinner is ready then. */
export function takeWay(intent: IntentOf<"TakeWay">, scene: Scene, kitchen: Kitchen): Outcome {
  const { session } = scene;
  const all = stepsWith(intent.way, scene).filter(({ task }) => isMeant(task, intent.target, session));
  const isNews = ({ task, ways, way }: Named): boolean =>
    ways.taken !== way && session.progress.get(task.id)?.state === "waiting";
  const news = all.filter(isNews);
  const [first, other] = news.length > 0 ? news : all.slice(0, 1);
  if (first === undefined) return noSuchWay(intent.way, scene);
  const isInFocus = first.task.id === session.focus?.task;
  if (other !== undefined && !isInFocus)
    return asksWhich(
      news.map(({ task }) => ({
        name: taskName(task, session.tasks),
        intent: { ...intent, target: { by: "task", task: task.id } },
      })),
    );
  const { task, way } = first;
  const order = { type: "TakeWay", dish: task.dish.id, step: task.step.id, way } as const;
  return ordered(kitchen, [order], (then) =>
    isInFocus
      ? inOneBreath(`${capital(way)}, then.`, then, kitchen)
      : `${capital(task.step.title)} ${way}: noted. Ready about ${clockAt(then.sheet.readyAt, kitchen)}.`,
  );
}

/** "Why the oven", "why not in a pan": what spoke for the way that is taken. */
export function whyWay({ way: said }: IntentOf<"WhyWay">, scene: Scene): Outcome {
  const [first] = stepsWith(said, scene);
  if (first === undefined) return noSuchWay(said, scene);
  const { task, ways, way } = first;
  if (ways.chosen.by !== "plan") {
    const who = ways.chosen.by === "cook" ? "You wanted it so" : "The recipe has it so";
    return told(`${who}: ${task.step.title} ${ways.taken}.`);
  }
  const over = ways.chosen.over.find((one) => one.way === way) ?? ways.chosen.over[0];
  return told(wayBecause(task.step, over?.because ?? "it is the only way here"));
}
