import { callsNow, helperCalls } from "../cook/calls-now.ts";
import type { Call } from "../cook/calls.ts";
import { openTimers } from "./answers/timer-names.ts";
import type { Kitchen, Question } from "./model.ts";
import { objectOf } from "./names.ts";
import { sceneOf } from "./outcome.ts";

/** Before anything is known. */
const usual = ["what can I say", "set a timer for ten minutes"] as const;

/** Three to five sentences that make sense at this moment, the likeliest first; every one is in the phrasebook. */
export function suggestions(kitchen: Kitchen): readonly string[] {
  const scene = sceneOf(kitchen.log, kitchen);
  const { question } = kitchen.dialogue;
  if (scene === null || scene.session.phase.state === "ended") {
    const { household } = kitchen;
    return (
      household?.talk.suggestions(kitchen, household) ?? [...usual, "how many tablespoons in a quarter cup"]
    );
  }
  const calls = callsNow(scene.session, scene.sheet, kitchen.now);
  const first = calls[0];
  const timers =
    openTimers(scene.session).length > 0 ? ["how long is left"] : ["set a timer for ten minutes"];
  const some = [
    ...(question === null ? [] : answersTo(question)),
    ...(first === undefined ? [] : fitting(first)),
    ...(helperCalls(scene.session).length === 0 ? [] : ["helper done"]),
    ...timers,
    "what next",
    "when do we eat",
  ];
  return [...new Set(some)].slice(0, 5);
}

/** What answers an open question. */
export function answersTo(question: Question): readonly string[] {
  switch (question.kind) {
    case "confirm":
      return ["yes", "no"];
    case "which":
      return question.candidates.slice(0, 3).map(({ name }) => name);
    case "more":
      return ["more", "no thanks"];
    case "missing":
      return ["never mind"];
  }
}

function fitting(call: Call): readonly string[] {
  switch (call.kind) {
    case "ring":
      return call.timer.task === null ? ["I hear it", "two more minutes"] : ["I hear it", "done", "not yet"];
    case "attend":
      return ["done", "say that again"];
    case "heat":
      return ["the oven is on", "which heat next"];
    case "take-off":
      return ["done", "not yet", "how do I know it's done"];
    case "put-on":
      return ["it's in", "what goes into this"];
    case "do":
      return call.task.step.uses.length > 0 ? ["done", "what goes into this"] : ["done", "say that again"];
    case "wait":
      return call.next === null
        ? ["what is left"]
        : [`${objectOf(call.next.step.title)} first`, "what is left"];
    case "held":
      return ["go on"];
    case "serve":
      return ["end the meal", "what is left"];
    case "ended":
      return ["what can I say"];
  }
}
