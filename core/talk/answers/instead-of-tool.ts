import { isPlural } from "../../food/names.ts";
import type { IntentOf } from "../intent.ts";
import { wayNames } from "../names.ts";
import type { Outcome, Scene } from "../outcome.ts";
import { told } from "../outcome.ts";
import { toolSwapFor } from "../tool-swaps-table.ts";
import { inBreaths, sentencesOf } from "../speech.ts";

/** A step of the meal that can be done in that way instead, where it has not begun; the sentence that takes it. */
function offered(way: string, { session }: Scene): readonly string[] {
  const task = session.tasks.find(
    ({ id, step }) =>
      session.progress.get(id)?.state === "waiting" &&
      step.ways !== null &&
      step.ways.all.some(({ name }) => name !== step.ways?.taken && wayNames(name).includes(way)),
  );
  return task === undefined
    ? []
    : [`The recipe knows that for "${task.step.title}": say "do it in the ${way}", and I plan it so.`];
}

/** "What can I use instead of the blender?": common practice, and the recipe's own other way where it has one. */
export function insteadOfTool({ tool }: IntentOf<"InsteadOfTool">, scene: Scene): Outcome {
  const swap = toolSwapFor(tool);
  if (swap === null) return told(`I know nothing to use instead of ${isPlural(tool) ? "" : "a "}${tool}.`);
  return inBreaths([...(swap.way === null ? [] : offered(swap.way, scene)), ...sentencesOf(swap.say)]);
}
