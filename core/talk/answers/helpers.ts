import { helperCalls } from "../../cook/calls-now.ts";
import { isThere, taskOf } from "../../cook/hands.ts";
import type { Order } from "../../cook/orders.ts";
import { listed, sayCall, sayHanded } from "../../cook/say-call.ts";
import { helpers } from "../../plan/worker.ts";
import type { Helper, Worker } from "../../plan/worker.ts";
import type { Task } from "../../plan/model.ts";
import { numberWords } from "../../units/number-words.ts";
import { between } from "../../units/quantity.ts";
import type { IntentOf } from "../intent.ts";
import type { Helping } from "../intent-groups.ts";
import type { Kitchen } from "../model.ts";
import type { Outcome, Scene } from "../outcome.ts";
import { ordered, told } from "../outcome.ts";
import { capital } from "../../units/capital.ts";
import { clockAt } from "../speech.ts";
import { finished, started, withTask } from "./steps.ts";

/** Two or three who cook together: who is there, and who does what. */
export function helping(intent: IntentOf<Helping>, scene: Scene, kitchen: Kitchen): Outcome {
  switch (intent.type) {
    case "HelperComes":
      return comes(scene, kitchen);
    case "HelperGoes":
      return goes(intent.helper, scene, kitchen);
    case "HelperDone":
      return helperDone(intent.helper, scene, kitchen);
    case "HandOver":
      return handOver(intent, scene, kitchen);
    case "AskHelper":
      return ask(intent.helper, scene);
  }
}

/** The next call for them follows by itself. */
function comes(scene: Scene, kitchen: Kitchen): Outcome {
  const fresh = helpers.find((helper) => !isThere(scene.session, helper));
  if (fresh === undefined) return told("I can call for three of you at most.");
  return ordered(kitchen, [{ type: "WelcomeHelper", helper: fresh }], (then) => {
    const count = numberWords(1 + then.session.helpers.length);
    const how = `Good, there are ${count} of you. Say "${fresh} done" after each step that I call for the ${fresh}.`;
    const sooner = between(then.sheet.readyAt, scene.sheet.readyAt);
    return sooner < 60 ? how : `${how} Ready at ${clockAt(then.sheet.readyAt, kitchen)}.`;
  });
}

const stepOf = (worker: Worker, { session }: Scene): Task | null =>
  session.tasks.find(({ id }) => id === taskOf(session, worker)) ?? null;

/** One of them, or all. */
function goes(helper: Helper | null, scene: Scene, kitchen: Kitchen): Outcome {
  const leaving = scene.session.helpers.flatMap((one) =>
    helper === null || one.helper === helper ? [one.helper] : [],
  );
  if (leaving.length === 0 && helper === null) return told("You are alone already.");
  const orders = leaving.map((one): Order => ({ type: "ReleaseHelper", helper: one }));
  const open = leaving.flatMap((one) => stepOf(one, scene)?.step.title ?? []);
  const unfinished = open.length === 0 ? "" : ` Not finished: ${listed(open)}.`;
  return ordered(
    kitchen,
    orders.length > 0 ? orders : [{ type: "ReleaseHelper", helper: helper ?? "helper" }],
    ({ session }) => {
      const left = session.helpers.map((one) => `the ${one.helper}`);
      return left.length === 0
        ? `Just you again.${unfinished}`
        : `Good. ${capital(listed(left))} stays.${unfinished}`;
    },
  );
}

/** What a helper was told to do is done, or set going; the next call follows in the same breath. */
function helperDone(helper: Helper, scene: Scene, kitchen: Kitchen): Outcome {
  const task = stepOf(helper, scene);
  if (task === null)
    return ordered(kitchen, [{ type: "Tick" }], (then) => next(helper, then, kitchen) ?? nothing(helper));
  const { orders } = task.step.hands === "off" ? started(task, kitchen) : finished([task], scene, kitchen);
  return ordered(kitchen, orders, (then) => `Good. ${next(helper, then, kitchen) ?? ""}`.trim());
}

function next(helper: Helper, { session }: Scene, kitchen: Kitchen): string | null {
  const call = helperCalls(session).find((one) => "by" in one && one.by === helper);
  return call === undefined ? null : sayCall(call, session, kitchen.now);
}

const nothing = (helper: Helper): string => `Nothing for the ${helper} just now.`;

/** A step goes from the cook, or from the list, to a helper. What the cook does then is called by itself. */
function handOver({ target, helper }: IntentOf<"HandOver">, scene: Scene, kitchen: Kitchen): Outcome {
  const give = (task: Task): Outcome =>
    ordered(kitchen, [{ type: "HandTask", task: task.id, helper }], () => sayHanded(task, helper));
  if (target !== null)
    return withTask(
      target,
      scene,
      kitchen,
      "choose",
      (by) => ({ type: "HandOver", target: by, helper }),
      give,
    );
  const mine = stepOf("cook", scene);
  return mine === null ? told("You have nothing in hand to give away.") : give(mine);
}

function ask(helper: Helper, scene: Scene): Outcome {
  const task = stepOf(helper, scene);
  return told(task === null ? nothing(helper) : sayHanded(task, helper));
}
