import { between, instant, later, minus, plus, seconds } from "../units/quantity.ts";
import type { Instant } from "../units/quantity.ts";
import type { Bound } from "./bound.ts";
import { cooksAt, inHands } from "./hands.ts";
import { handsUntil } from "./hands.ts";
import type { Entry, PlanInput, RunSheet, Task, TaskId } from "./model.ts";
import { changeOver, heatOf, ovensOf } from "./oven.ts";
import { poolsOf, poolUse } from "./pools.ts";
import { takersOf } from "./tasks.ts";

/** An entry that is not over, with its task. */
export interface Row {
  readonly task: Task;
  readonly entry: Entry;
}

/** A sheet as it is looked through for what binds its entries. */
export interface Look {
  readonly input: PlanInput;
  readonly sheet: RunSheet;
  /** What is not over, in the order of the sheet. */
  readonly rows: readonly Row[];
  /** When all is on the table: when it was asked for, or when it is ready if that is later. */
  readonly table: Instant;
}

/** The sheet with its tasks at hand. */
export function lookAt(input: PlanInput, sheet: RunSheet): Look {
  const known = new Map(input.tasks.map((task) => [task.id, task]));
  const rows = sheet.entries.flatMap((entry): readonly Row[] => {
    const task = known.get(entry.task);
    const isOver = input.progress.get(entry.task)?.state === "done";
    return task === undefined || isOver ? [] : [{ task, entry }];
  });
  const table = input.serveAt === null ? sheet.readyAt : later(sheet.readyAt, input.serveAt);
  return { input, sheet, rows, table };
}

/** A stretch of time in which a task has so much of something. */
interface Stay {
  readonly task: TaskId;
  readonly start: Instant;
  readonly end: Instant;
  readonly amount: number;
}

/** Who took up too much of a thing until just before `start` for `mine` more of it; null where there was enough. */
function keptBy(stays: readonly Stay[], mine: number, count: number, start: Instant): Stay | null {
  const before = stays.filter((stay) => stay.end <= start).sort((a, b) => b.end - a.end);
  const full = before.find(({ end }) => {
    const there = stays.filter((stay) => stay.start < end && end <= stay.end);
    return there.reduce((sum, stay) => sum + stay.amount, mine) > count;
  });
  return full ?? null;
}

function staysOf(look: Look, mine: Row, amountOf: (row: Row) => number): readonly Stay[] {
  return look.rows.flatMap((row): readonly Stay[] => {
    const amount = row === mine ? 0 : amountOf(row);
    return amount === 0 ? [] : [{ task: row.task.id, start: row.entry.start, end: row.entry.end, amount }];
  });
}

/** What must come before it, with the rest that it asks for; what is over counts as well. */
function tasksBefore(look: Look, { task }: Row): readonly Bound[] {
  return task.after.flatMap((link): readonly Bound[] => {
    const open = look.rows.find((row) => row.task.id === link.task);
    const over = look.input.progress.get(link.task);
    const end = open === undefined ? (over?.state === "done" ? over.at : null) : open.entry.end;
    if (end === null) return [];
    return [{ kind: "after", from: plus(end, link.atLeast), task: link.task, rest: link.atLeast }];
  });
}

/** The oven's way to its heat: from what was in it before at another heat, or from now. */
function ovenHeat(look: Look, mine: Row, oven: string): readonly Bound[] {
  const { input, sheet, rows } = look;
  const move = sheet.ovenMoves.find((turn) => turn.oven === oven && turn.for.includes(mine.task.id));
  if (move !== undefined) {
    const before = rows.filter(
      ({ task, entry }) =>
        entry.lanes.includes(oven) && !move.for.includes(task.id) && entry.end <= move.readyAt,
    );
    const last = before.reduce<Row | null>(
      (latest, row) => (latest === null || row.entry.end > latest.entry.end ? row : latest),
      null,
    );
    const from = instant((last?.entry.end ?? input.now) + (move.readyAt - move.at));
    return [{ kind: "heat", from, task: last?.task.id ?? null, oven, heat: move.heat }];
  }
  const baking = rows.filter(({ task }) => input.progress.get(task.id)?.state === "running");
  const facts = ovensOf(
    input,
    baking.flatMap(({ task }) => heatOf(task.step) ?? []),
  );
  const hot = facts.find(({ name }) => name === oven);
  const heat = input.ovens.find((one) => one.oven === oven)?.heat ?? null;
  if (hot === undefined || hot.set === null || hot.temperature === null || heat === null) return [];
  const from = instant(input.now + changeOver(hot, hot.temperature, hot.set));
  return from <= input.now ? [] : [{ kind: "heat", from, task: null, oven, heat }];
}

function ovenBounds(look: Look, mine: Row): readonly Bound[] {
  const use = heatOf(mine.task.step);
  const oven = look.input.meal.kitchen.ovens.find(({ name }) => mine.entry.lanes.includes(name));
  if (use === null || oven === undefined) return [];
  const stays = staysOf(look, mine, ({ task, entry }) =>
    entry.lanes.includes(oven.name) ? (heatOf(task.step)?.racks ?? 0) : 0,
  );
  const racks = Math.max(1, oven.racks);
  const stay = keptBy(stays, Math.min(use.racks, racks), racks, mine.entry.start);
  const full: readonly Bound[] =
    stay === null ? [] : [{ kind: "rack", from: stay.end, task: stay.task, oven: oven.name }];
  return [...ovenHeat(look, mine, oven.name), ...full];
}

/** Burners, appliances and bowls. */
function thingBounds(look: Look, mine: Row): readonly Bound[] {
  const pools = poolsOf(look.input.meal);
  return [...pools].flatMap(([name, { index, count }]): readonly Bound[] => {
    const amountOf = ({ task }: Row): number =>
      poolUse(task, pools).find(({ pool }) => pool === index)?.amount ?? 0;
    const amount = amountOf(mine);
    if (amount === 0) return [];
    const stay = keptBy(staysOf(look, mine, amountOf), amount, count, mine.entry.start);
    const thing = name.replace(/^(?:appliance|bowl) /, "");
    return stay === null ? [] : [{ kind: "thing", from: stay.end, task: stay.task, thing }];
  });
}

function handsBound(look: Look, mine: Row): readonly Bound[] {
  const stays = look.rows.flatMap(({ task, entry: { start, end } }): readonly Stay[] =>
    task === mine.task ? [] : [{ task: task.id, start, end: handsUntil(task, start, end), amount: 1 }],
  );
  const stay = keptBy(stays, 1, cooksAt(look.input), mine.entry.start);
  return stay === null ? [] : [{ kind: "hands", from: stay.end, task: stay.task }];
}

const lengthOf = ({ entry }: Row) => between(entry.start, entry.end);

/** What must follow it soon: begun earlier it would be over too long before. */
function followers(look: Look, mine: Row): readonly Bound[] {
  return look.rows.flatMap(({ task, entry }): readonly Bound[] => {
    const link = task.after.find((one) => one.task === mine.task.id);
    if (link === undefined || link.atMost === null) return [];
    const from = minus(minus(entry.start, link.atMost), lengthOf(mine));
    return [{ kind: "soon", from, task: task.id, within: link.atMost }];
  });
}

/** What keeps only so long: hot food, what must end close to serving, what is made ahead. */
function keepingBounds(look: Look, mine: Row): readonly Bound[] {
  const { hold, endsBeforeServing: close, ahead } = mine.task.step;
  const takers = takersOf(
    mine.task,
    look.rows.map(({ task }) => task),
  );
  const last = look.rows.reduce<Row | null>((latest, row) => {
    if (!takers.includes(row.task)) return latest;
    return latest === null || row.entry.start > latest.entry.start ? row : latest;
  }, null);
  const back = (to: Instant, by: typeof hold): Instant => minus(minus(to, by ?? seconds(0)), lengthOf(mine));
  const hot: Bound[] =
    hold === null
      ? []
      : [
          {
            kind: "hot",
            from: back(last?.entry.start ?? look.table, hold),
            task: last?.task.id ?? null,
            keeps: hold,
          },
        ];
  const fresh: Bound[] =
    close === null ? [] : [{ kind: "fresh", from: back(look.table, close), within: close }];
  const kept: Bound[] =
    ahead === null ? [] : [{ kind: "ahead", from: back(look.table, ahead), keeps: ahead }];
  return [...hot, ...fresh, ...kept];
}

/**
 * All that keeps an entry from starting sooner, if everything else stays where it is; in the order in which one
 * would tell it. One that is later than its start is a limit that the sheet breaks.
 */
export function boundsOf(look: Look, mine: Row): readonly Bound[] {
  const { input } = look;
  const isWished = inHands(input).includes(mine.task.id) || input.first.includes(mine.task.id);
  return [
    ...tasksBefore(look, mine),
    ...ovenBounds(look, mine),
    ...thingBounds(look, mine),
    ...handsBound(look, mine),
    ...followers(look, mine),
    ...keepingBounds(look, mine),
    { kind: isWished ? "wish" : "now", from: input.now },
  ];
}
