import { leastEvenings, leastSteps } from "./estimate.ts";
import type { KnownPace, WorkKind } from "./pace.ts";
import { timesOf } from "./pace.ts";

/** What each kind of work is called. */
export const kindWords: Readonly<Record<WorkKind, string>> = {
  washing: "washing and cleaning",
  cutting: "cutting and peeling",
  mixing: "mixing and kneading",
  shaping: "shaping and filling",
  stove: "standing at the stove",
  plating: "dressing and plating",
  other: "all other work by hand",
};

const counted = (count: number, one: string): string => (count === 1 ? `one ${one}` : `${count} ${one}s`);
const isLearnt = ({ steps, evenings }: KnownPace): boolean =>
  steps >= leastSteps && evenings >= leastEvenings;

/** "You take 1.3 times as long as the recipes say, from 14 steps on 4 evenings." */
export function sayLearnt(pace: KnownPace): string {
  const from = `${counted(pace.steps, "step")} on ${counted(pace.evenings, "evening")}`;
  if (pace.steps === 0) return "Nothing is known yet.";
  if (!isLearnt(pace)) return `Too little is known yet: ${from}.`;
  const times = pace.times.toFixed(1);
  return times === "1.0"
    ? `You take about as long as the recipes say, from ${from}.`
    : `You take ${times} times as long as the recipes say, from ${from}.`;
}

/** What the plan makes of it, where that is not what was learnt; empty where it is. */
export function sayPlanned(pace: KnownPace): string {
  const times = timesOf(pace);
  if (pace.wish === null && times === pace.times) return "";
  if (times === 1) return "Planned as the recipes say.";
  return `Planned ${times.toFixed(2).replace(/0$/, "")} times as long as the recipes say.`;
}
