import { timesOf } from "../../pace/pace.ts";
import { kindWords } from "../../pace/say-pace.ts";
import { numberWords } from "../../units/number-words.ts";
import { between, minutes, seconds } from "../../units/quantity.ts";
import { spokenRoughly } from "../../units/duration.ts";
import type { IntentOf } from "../intent.ts";
import type { Kitchen } from "../model.ts";
import type { Outcome, Scene } from "../outcome.ts";
import { ordered, told } from "../outcome.ts";
import { capital } from "../../units/capital.ts";
import { clockAt } from "../speech.ts";
import { kindOfWork } from "../work-words.ts";

/** A smaller change of dinner's time is not worth a word. */
const least = minutes(1);

/** "Thirty percent longer than the recipes say". */
function comparedTo(times: number): string {
  const percent = Math.round(Math.abs(times - 1) * 100);
  if (percent === 0) return "as the recipes say";
  return `${numberWords(percent)} percent ${times > 1 ? "longer" : "shorter"}`;
}

/** When all is ready now, and how much that has moved; where it is later than asked, by how much. */
function readyWords(before: Scene, { sheet }: Scene, kitchen: Kitchen): string {
  const moved = between(before.sheet.readyAt, sheet.readyAt);
  const by = spokenRoughly(seconds(Math.abs(moved)));
  const ready = `Ready at ${clockAt(sheet.readyAt, kitchen)}`;
  if (sheet.late > least) return `${ready}, ${spokenRoughly(sheet.late)} late.`;
  if (Math.abs(moved) < least) return `${ready} as before.`;
  return `${ready}, ${by} ${moved > 0 ? "later" : "sooner"}.`;
}

/** "I chop slowly": planned so from now on, in this meal and those to come. */
export function myPace({ work, wish }: IntentOf<"MyPace">, scene: Scene, kitchen: Kitchen): Outcome {
  const kind = kindOfWork(work);
  if (kind === null)
    return told(`I keep no pace for ${work}. I know chopping, mixing, shaping, frying, plating, washing.`);
  const known = scene.session.paces.find((pace) => pace.kind === kind);
  if (known === undefined) return told("This meal knows no paces. The next one that you begin will.");
  const name = capital(kindWords[kind]);
  if (kind === "stove" && wish === "faster")
    return told(
      "At the stove the heat has its say: nothing there is planned shorter than the recipe has it.",
    );
  if (known.wish === wish) return told(`${name}: planned so already, ${comparedTo(timesOf(known))}.`);
  return ordered(kitchen, [{ type: "SetPace", kind, wish }], (then) => {
    const times = comparedTo(timesOf({ ...known, wish }));
    return `${name}: planned ${times}. ${readyWords(scene, then, kitchen)}`;
  });
}
