import { instant } from "../units/quantity.ts";
import type { Instant } from "../units/quantity.ts";
import type { Schedule } from "./drafts.ts";
import type { OvenMove } from "./model.ts";
import { changeOver, writtenHeat } from "./oven.ts";
import type { OvenFacts } from "./oven.ts";
import type { Act } from "./act.ts";
import type { Problem } from "./problem.ts";

interface Used {
  readonly act: Act;
  readonly start: number;
  readonly heat: number;
}

function movesOf(
  oven: OvenFacts,
  used: readonly Used[],
  acts: readonly Act[],
  now: Instant,
): readonly OvenMove[] {
  const steps = acts.map((act) => act.task.step);
  const moves: OvenMove[] = [];
  let set = used.find((one) => one.act.running !== null)?.heat ?? oven.set;
  let hot = oven.temperature ?? oven.set ?? 0;
  // Until its dial is turned it goes on to what it is set to, and that may be further from the next heat.
  let meant = oven.set ?? hot;
  for (const { act, start, heat } of used) {
    const last = moves.at(-1);
    if (heat !== set) {
      const lead = Math.max(changeOver(oven, hot, heat), changeOver(oven, meant, heat));
      const at = instant(now + Math.max(0, start - lead));
      const readyAt = instant(now + start);
      moves.push({ oven: oven.name, heat: writtenHeat(heat, steps), at, readyAt, for: [act.task.id] });
    } else if (last !== undefined) {
      moves.splice(-1, 1, { ...last, for: [...last.for, act.task.id] });
    }
    set = heat;
    hot = heat;
    meant = heat;
  }
  return moves;
}

/** Each turn of an oven's dial that the plan wants, in order of time; none for what is set already. */
export function ovenMoves(problem: Problem, schedule: Schedule, now: Instant): readonly OvenMove[] {
  const moves = problem.ovens.flatMap((oven, index) => {
    const used = problem.acts.flatMap((act, at): readonly Used[] => {
      const place = schedule[at];
      if (place?.baking?.oven !== index) return [];
      return [{ act, start: place.start, heat: place.baking.heat }];
    });
    used.sort((a, b) => a.start - b.start);
    return movesOf(oven, used, problem.acts, now);
  });
  return moves.sort((a, b) => a.at - b.at);
}
