import type { Instant } from "../units/quantity.ts";
import { instant } from "../units/quantity.ts";
import type { Span } from "../recipe/model.ts";
import { cooksAt } from "./hands.ts";
import { helpers } from "./worker.ts";
import type { Bound } from "./bound.ts";
import { boundsOf, lookAt, type Look } from "./bounds.ts";
import { Chance } from "./engine/chance.ts";
import type { Entry, PlanInput, RunSheet, Task, TaskId } from "./model.ts";
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
/** What is planned at the cook's own pace has this in it already. */
export const MEAN_PACE = (PACE.low + PACE.likely + PACE.high) / 3;

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
  readonly task: Task;
  /** Lines that must have ended, and how much earlier, in milliseconds. */
  readonly waits: readonly { readonly line: number; readonly ms: number }[];
  /** What is over must have rested, and what keeps only so long is not made before its time. */
  readonly notBefore: number;
  readonly runningSince: number | null;
  readonly span: Span;
}

const isApart = (one: Entry, other: Entry): boolean => one.end <= other.start;
/** Lanes of which there is only one each. Where a burner stays free all evening, whoever finds one taken uses that. */
function scarceLanes({ meal }: PlanInput, sheet: RunSheet): ReadonlySet<string> {
  const lanes = new Set(sheet.entries.flatMap((entry) => entry.lanes));
  const burners = [...lanes].filter((lane) => lane.startsWith("burner "));
  const plenty = [
    "cook",
    ...helpers,
    "counter",
    "fridge",
    ...(burners.length < meal.kitchen.burners ? burners : []),
  ];
  return new Set([...lanes].filter((lane) => !plenty.includes(lane)));
}

/** How long the oven is on its way before an entry that it was turned for. */
function turning(sheet: RunSheet, one: Entry, other: Entry): number {
  const move = sheet.ovenMoves.find((turn) => turn.for.includes(other.task) && !turn.for.includes(one.task));
  return move === undefined ? 0 : Math.min(move.readyAt - move.at, other.start - one.end);
}

/** What keeps a row back though all before it is over: food that keeps only so long, an oven that is cold at first. */
const isKept = (bound: Bound): boolean =>
  ["hot", "fresh", "ahead"].includes(bound.kind) || (bound.kind === "heat" && bound.task === null);

/**
 * From when on a cook who is ahead of the sheet may begin each row: what keeps at once, what is hot as far as it may wait
 * for the table, and what must be followed soon as soon as its follower may come.
 */
function soonestOf(look: Look): ReadonlyMap<TaskId, number> {
  const soonest = new Map<TaskId, number>();
  for (const row of look.rows.toReversed()) {
    const { entry, task } = row;
    const kept = boundsOf(look, row).flatMap((bound) => (isKept(bound) ? [bound.from] : []));
    const followed = look.rows.flatMap((other) =>
      other.task.after.flatMap(({ task: before, atMost }) =>
        before !== task.id || atMost === null
          ? []
          : [(soonest.get(other.task.id) ?? other.entry.start) - atMost * 1000 - (entry.end - entry.start)],
      ),
    );
    soonest.set(task.id, Math.min(entry.start, Math.max(look.input.now, ...kept, ...followed)));
  }
  return soonest;
}

/** When what is over will have rested. */
function restedAt({ after }: Task, { progress, now }: PlanInput): number {
  const rested = after.map((link) => {
    const before = progress.get(link.task);
    return before?.state === "done" ? before.at + link.atLeast * 1000 : now;
  });
  return Math.max(now, ...rested);
}

function linesOf(input: PlanInput, sheet: RunSheet): readonly Line[] {
  const look = lookAt(input, sheet);
  const soonest = soonestOf(look);
  const scarce = scarceLanes(input, sheet);
  return look.rows.map((row, at): Line => {
    const { entry, task } = row;
    const after = task.after.flatMap((link) => {
      const line = look.rows.findIndex((one) => one.task.id === link.task);
      return line < 0 ? [] : [{ line, ms: link.atLeast * 1000 }];
    });
    // What the plan puts one after the other on one lane stays so; what it lets run side by side may.
    const behind = look.rows.slice(0, at).flatMap(({ entry: one }, line) => {
      const isBehind =
        isApart(one, entry) && one.lanes.some((lane) => scarce.has(lane) && entry.lanes.includes(lane));
      return isBehind ? [{ line, ms: turning(sheet, one, entry) }] : [];
    });
    const progress = input.progress.get(task.id);
    return {
      task,
      waits: [...after, ...behind],
      notBefore: Math.max(soonest.get(task.id) ?? entry.start, restedAt(task, input)),
      runningSince: progress?.state === "running" ? progress.startedAt : null,
      span: spanOf(task, progress),
    };
  });
}

/** Which line begins next, and when: the first of the sheet that can once a cook is free, else the first that can at all. */
function next(lines: readonly Line[], ends: readonly (number | null)[], freeAt: number) {
  let found: { readonly at: number; readonly start: number } | null = null;
  for (const [at, { task, waits, notBefore: from, runningSince }] of lines.entries()) {
    if (ends[at] !== null) continue;
    if (runningSince !== null) return { at, start: runningSince };
    const isOpen = waits.every(({ line }) => ends[line] !== null);
    if (!isOpen) continue;
    const free = waits.reduce((last, { line, ms }) => Math.max(last, (ends[line] ?? 0) + ms), from);
    // What goes on by itself is begun in between, whatever is in hand.
    const start = task.step.hands === "on" ? Math.max(free, freeAt) : free;
    if (found === null || start < found.start) found = { at, start };
  }
  return found;
}

/** One evening: each cook does one thing after another, in the order of the sheet, and goes on with what can begin. */
function evening(lines: readonly Line[], cooks: number, now: number, chance: Chance): number {
  const pace = triangular(PACE.low, PACE.likely, PACE.high, chance.next());
  const lengths = lines.map(({ task, span }) => {
    const times = task.step.hands === "off" ? 1 : task.pace === 1 ? pace : pace / MEAN_PACE;
    return draw(span, chance) * 1000 * times;
  });
  const ends: (number | null)[] = lines.map(() => null);
  const free = Array.from({ length: cooks }, () => now);
  let ready = now;
  for (;;) {
    const cook = free.indexOf(Math.min(...free));
    const freeAt = free[cook] ?? now;
    const one = next(lines, ends, freeAt);
    if (one === null) return ready;
    const { at, start } = one;
    const length = lengths[at] ?? 0;
    const end = Math.max(start + length, now);
    ends[at] = end;
    ready = Math.max(ready, end);
    if (lines[at]?.task.step.hands === "on") free[cook] = Math.max(freeAt, end);
    else if (lines[at]?.runningSince === null)
      free[cook] = Math.max(freeAt, start) + Math.min(length, MINUTE_MS);
  }
}

/**
 * Cooks by the sheet so many times, each step as long as chance will have it: unattended ones within their range, work
 * by hand at the pace of the evening besides. Nobody plans anew in these evenings, but a cook who cannot go on with what
 * comes next goes on with what can begin, as a new plan would have it; how well that agrees with evenings that are
 * planned anew each minute stands in docs/decisions/0019-sure-to-be-in-time.md. The same seed gives the same outlook.
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
