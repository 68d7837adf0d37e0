import type { Instant } from "../units/quantity.ts";
import { instant } from "../units/quantity.ts";
import type { Span } from "../recipe/model.ts";
import { cooksAt } from "./hands.ts";
import { helpers } from "./worker.ts";
import { Chance } from "./engine/chance.ts";
import type { Entry, PlanInput, RunSheet, Task } from "./model.ts";
import { spanOf } from "./tasks.ts";

/** How a sheet fares where steps take shorter or longer than planned. */
export interface Outlook {
  /** How often all is ready by the serving time, from 0 to 1; null where none was asked for. */
  readonly onTime: number | null;
  /** When all is ready in one evening of ten, in the middle one, and in nine of ten. */
  readonly readyAt: { readonly early: Instant; readonly middle: Instant; readonly late: Instant };
}

const MINUTE_MS = 60_000;
/** An evening's pace of work by hand, against what the recipes say. An assumption, no source: few cooks are faster. */
export const PACE = { low: 0.85, likely: 1, high: 1.3 };

/**
 * A draw from the triangular distribution, by the inverse of its distribution function.
 * Source: Evans, Hastings & Peacock, Statistical Distributions, chapter on the triangular distribution (from memory).
 * @param chance in [0, 1)
 */
export function triangular(low: number, likely: number, high: number, chance: number): number {
  if (high <= low) return low;
  const turn = (likely - low) / (high - low);
  return chance < turn
    ? low + Math.sqrt(chance * (high - low) * (likely - low))
    : high - Math.sqrt((1 - chance) * (high - low) * (high - likely));
}

const draw = ({ low, high }: Span, chance: Chance): number =>
  triangular(low, (low + high) / 2, high, chance.next());

/** One entry that is not over, with those that it waits for in any evening. */
interface Line {
  readonly entry: Entry;
  readonly task: Task;
  /** Lines that must have ended, and how much earlier, in milliseconds. */
  readonly waits: readonly { readonly line: number; readonly ms: number }[];
  /** What is over and must have rested. */
  readonly notBefore: number;
  readonly runningSince: number | null;
  readonly span: Span;
}

const isApart = (one: Entry, other: Entry): boolean => one.end <= other.start;
/** Hands are kept count of in each evening, and there is always room on these. */
const apart: ReadonlySet<string> = new Set(["cook", ...helpers, "counter", "fridge"]);
const sharesLane = (one: Entry, other: Entry): boolean =>
  one.lanes.some((lane) => !apart.has(lane) && other.lanes.includes(lane));

/** How long the oven is on its way before an entry that it was turned for. */
function turning(sheet: RunSheet, one: Entry, other: Entry): number {
  const move = sheet.ovenMoves.find((turn) => turn.for.includes(other.task) && !turn.for.includes(one.task));
  return move === undefined ? 0 : Math.min(move.readyAt - move.at, other.start - one.end);
}

function linesOf(input: PlanInput, sheet: RunSheet): readonly Line[] {
  const known = new Map(input.tasks.map((task) => [task.id, task]));
  const open = sheet.entries.filter((entry) => input.progress.get(entry.task)?.state !== "done");
  return open.flatMap((entry, at): readonly Line[] => {
    const task = known.get(entry.task);
    if (task === undefined) return [];
    const before = open.slice(0, at);
    const after = task.after.flatMap((link) => {
      const line = open.findIndex((one) => one.task === link.task);
      return line < 0 ? [] : [{ line, ms: link.atLeast * 1000 }];
    });
    // What the plan puts one after the other on one lane stays so; what it lets run side by side may.
    const behind = before.flatMap((one, line) =>
      sharesLane(one, entry) && isApart(one, entry) ? [{ line, ms: turning(sheet, one, entry) }] : [],
    );
    const rests = task.after.flatMap((link) => {
      const progress = input.progress.get(link.task);
      return progress?.state === "done" ? [progress.at + link.atLeast * 1000] : [];
    });
    const progress = input.progress.get(entry.task);
    const isRunning = progress?.state === "running";
    return [
      {
        entry,
        task,
        waits: [...after, ...behind],
        notBefore: Math.max(entry.start, ...rests),
        runningSince: isRunning ? progress.startedAt : null,
        span: spanOf(task, progress),
      },
    ];
  });
}

/** One evening: the sheet's order is kept, nothing begins before its time, and each cook does one thing after another. */
function evening(lines: readonly Line[], cooks: number, now: number, chance: Chance): number {
  const pace = triangular(PACE.low, PACE.likely, PACE.high, chance.next());
  const ends: number[] = [];
  const free = Array.from({ length: cooks }, () => now);
  let ready = now;
  for (const { task, waits, notBefore, runningSince, span } of lines) {
    const isOn = task.step.hands === "on";
    const length = draw(span, chance) * 1000 * (isOn ? pace : 1);
    const may = waits.reduce((from, { line, ms }) => Math.max(from, (ends[line] ?? now) + ms), notBefore);
    const cook = free.indexOf(Math.min(...free));
    const start = runningSince ?? Math.max(may, free[cook] ?? now);
    const end = Math.max(start + length, now);
    ends.push(end);
    ready = Math.max(ready, end);
    if (isOn) free[cook] = Math.max(free[cook] ?? now, end);
    else if (runningSince === null) free[cook] = start + Math.min(length, MINUTE_MS);
  }
  return ready;
}

/**
 * Cooks by the sheet so many times, each step as long as chance will have it: unattended ones within their range, work
 * by hand at the pace of the evening besides. Nobody plans anew in these evenings, so they come out rather late than
 * early. The same seed gives the same outlook.
 */
export function outlookOf(
  input: PlanInput,
  sheet: RunSheet,
  { seed, evenings }: { readonly seed: number; readonly evenings: number },
): Outlook {
  const lines = linesOf(input, sheet);
  const chance = new Chance(seed);
  const ready = Array.from({ length: evenings }, () =>
    evening(lines, cooksAt(input), input.now, chance),
  ).sort((a, b) => a - b);
  const at = (share: number): Instant =>
    instant(Math.round(ready[Math.min(ready.length - 1, Math.floor(share * ready.length))] ?? input.now));
  const { serveAt } = input;
  const inTime = serveAt === null ? null : ready.filter((moment) => moment <= serveAt).length / evenings;
  return { onTime: inTime, readyAt: { early: at(0.1), middle: at(0.5), late: at(0.9) } };
}
