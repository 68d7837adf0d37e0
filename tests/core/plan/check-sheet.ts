import type { Entry, OvenMove, PlanInput, RunSheet, Task } from "../../../core/plan/model.ts";
import { momentsOf } from "../../../core/plan/tasks.ts";
import type { HeatRange, Need, Oven } from "../../../core/recipe/model.ts";
import type { Heat } from "../../../core/units/temperature.ts";
import { checkLimits } from "./check-limits.ts";
import type { Row } from "./row.ts";

const MINUTE = 60_000;
const fahrenheit = (heat: Heat): number => (heat.scale === "F" ? heat.degrees : heat.degrees * 1.8 + 32);
const meets = (a: Entry, b: Entry): boolean => a.start < b.end && b.start < a.end;

function rowsOf(input: PlanInput, sheet: RunSheet, faults: string[]): readonly Row[] {
  const expected = input.tasks.filter((task) => input.progress.get(task.id)?.state !== "skipped");
  const counts = new Map<string, number>();
  for (const { task } of sheet.entries) counts.set(task, (counts.get(task) ?? 0) + 1);
  for (const { id } of expected)
    if (counts.get(id) !== 1) faults.push(`${id} stands ${counts.get(id) ?? 0} times`);
  if (sheet.entries.length !== expected.length) faults.push("more entries than tasks");
  return sheet.entries.flatMap((entry) => {
    const task = expected.find((one) => one.id === entry.task);
    const state = input.progress.get(entry.task)?.state ?? "waiting";
    return task === undefined || state === "skipped" ? [] : [{ entry, task, state }];
  });
}

function checkTimes(input: PlanInput, rows: readonly Row[], faults: string[]): void {
  for (const { entry, task, state } of rows) {
    const progress = input.progress.get(task.id);
    const span = progress?.state === "running" ? progress.span : task.step.time;
    const middle = Math.round(((span.low + span.high) / 2) * task.pace) * 1000;
    if (entry.look > entry.end) faults.push(`${task.id} is looked at after its end`);
    if (state === "waiting" && entry.start < input.now) faults.push(`${task.id} starts in the past`);
    if (state === "waiting" && entry.end - entry.start !== middle)
      faults.push(`${task.id} has another length`);
    if (progress?.state === "running") {
      const end = Math.max(progress.startedAt + middle, input.now);
      if (entry.start !== progress.startedAt || entry.end !== end)
        faults.push(`${task.id} was moved while running`);
    }
    if (progress?.state === "done" && entry.end !== progress.at)
      faults.push(`${task.id} ended at another time`);
  }
  const starts = rows.map((row) => row.entry.start);
  if (starts.some((start, index) => index > 0 && start < (starts[index - 1] ?? 0)))
    faults.push("not in order of start");
}

function checkPrecedence(rows: readonly Row[], faults: string[]): void {
  for (const { entry, task, state } of rows) {
    if (state !== "waiting") continue;
    for (const link of task.after) {
      const before = rows.find((row) => row.task.id === link.task);
      if (before === undefined) continue;
      if (entry.start < before.entry.end + link.atLeast * 1000)
        faults.push(`${task.id} starts before ${link.task} allows`);
    }
  }
}

function handsTime(row: Row): readonly [number, number] {
  const { start, end } = row.entry;
  return [start, row.task.step.hands === "on" ? end : Math.min(end, start + MINUTE)];
}

/** No more work at once than there are cooks, where something begins. What runs already may be too much. */
function checkCooks(input: PlanInput, rows: readonly Row[], faults: string[]): void {
  const open = rows.filter((row) => row.state !== "done");
  for (const row of open) {
    const [start] = handsTime(row);
    const wanted = open.filter((one) => handsTime(one)[0] <= start && start < handsTime(one)[1]);
    if (wanted.length <= 1 + input.helpers.length || wanted.every(({ state }) => state === "running"))
      continue;
    faults.push(`too few hands for ${wanted.map(({ task }) => task.id).join(" and ")} at once`);
  }
}

/** Work by hand is somebody's who is there, and nobody does two things at once. */
function checkWorkers(input: PlanInput, rows: readonly Row[], faults: string[]): void {
  const there = ["cook", ...input.helpers.map(({ helper }) => helper)];
  const work = rows.filter(({ state, task }) => state !== "done" && task.step.hands === "on");
  work.forEach((a, index) => {
    const mine = there.filter((one) => a.entry.lanes.includes(one));
    if (mine.length !== 1) faults.push(`${a.task.id} is done by ${mine.length} of those who are there`);
    for (const b of work.slice(index + 1)) {
      const isBegun = a.state === "running" && b.state === "running";
      if (!isBegun && mine.some((one) => b.entry.lanes.includes(one)) && meets(a.entry, b.entry))
        faults.push(`${mine.join()} has ${a.task.id} and ${b.task.id} at once`);
    }
  });
}

/** At each start: how much of something those that run then take together. */
function peak(rows: readonly Row[], amount: (need: Need) => number): number {
  const use = (row: Row) => row.task.step.needs.reduce((sum, need) => sum + amount(need), 0);
  const users = rows.filter((row) => row.state !== "done" && use(row) > 0);
  return Math.max(
    0,
    ...users.map(({ entry: { start } }) =>
      users.reduce(
        (sum, row) => (row.entry.start <= start && row.entry.end > start ? sum + use(row) : sum),
        0,
      ),
    ),
  );
}

function checkThings(input: PlanInput, rows: readonly Row[], faults: string[]): void {
  const { kitchen } = input.meal;
  const needs = input.tasks.flatMap((task) => task.step.needs);
  const single = Math.max(0, ...needs.map((need) => (need.kind === "burner" ? need.count : 0)));
  const burners = peak(rows, (need) => (need.kind === "burner" ? need.count : 0));
  if (burners > Math.max(kitchen.burners, single)) faults.push(`${burners} burners at once`);
  for (const name of new Set(needs.flatMap((need) => (need.kind === "appliance" ? [need.name] : [])))) {
    const count = Math.max(1, kitchen.appliances.filter((one) => one === name).length);
    if (peak(rows, (need) => (need.kind === "appliance" && need.name === name ? 1 : 0)) > count) {
      faults.push(`more than ${count} of ${name} at once`);
    }
  }
  for (const name of new Set(needs.flatMap((need) => (need.kind === "bowl" ? [need.name] : [])))) {
    if (peak(rows, (need) => (need.kind === "bowl" && need.name === name ? 1 : 0)) > 1)
      faults.push(`${name} twice`);
  }
}

function checkLanes(rows: readonly Row[], faults: string[]): void {
  const open = rows.filter((row) => row.state !== "done");
  open.forEach((a, index) => {
    const burners = a.entry.lanes.filter((lane) => lane.startsWith("burner "));
    if (a.entry.lanes.length === 0) faults.push(`${a.task.id} has no lane`);
    for (const b of open.slice(index + 1)) {
      const shared = burners.filter((lane) => b.entry.lanes.includes(lane));
      if (shared.length > 0 && meets(a.entry, b.entry))
        faults.push(`${a.task.id} and ${b.task.id} on ${shared[0] ?? ""}`);
    }
  });
}

function rangeOf(task: Task): HeatRange | null {
  const need = task.step.needs.find((one) => one.kind === "oven");
  return need?.kind === "oven" ? need.heat : null;
}

/** How hot the oven is by now at least, or at most when it cools: from what baked before the dial was turned. */
function warmth(input: PlanInput, oven: Oven, set: number, setAt: number): number {
  const over = input.tasks.flatMap((task) => {
    const progress = input.progress.get(task.id);
    const range = rangeOf(task);
    return range !== null && progress?.state === "done" ? [{ at: progress.at, range }] : [];
  });
  const last = over.reduce<(typeof over)[number] | null>(
    (a, b) => (a === null || b.at >= a.at ? b : a),
    null,
  );
  if (last !== null && last.at > setAt) return set;
  const [low, high] = last === null ? [70, 70] : [fahrenheit(last.range.low), fahrenheit(last.range.high)];
  const minutes = (input.now - setAt) / MINUTE;
  const heatingLeft = (set - low) / oven.heats - minutes;
  const coolingLeft = (high - set) / oven.cools - minutes;
  if (Math.max(heatingLeft, coolingLeft) <= 0) return set;
  return heatingLeft >= coolingLeft ? set - heatingLeft * oven.heats : set + coolingLeft * oven.cools;
}

/** Turns the dial as the sheet says and watches the oven's temperature minute by minute of change. */
function checkOven(
  input: PlanInput,
  rows: readonly Row[],
  moves: readonly OvenMove[],
  name: string,
  faults: string[],
): void {
  const oven = input.meal.kitchen.ovens.find((one) => one.name === name);
  const users = rows.filter((row) => row.state !== "done" && row.entry.lanes.includes(name));
  if (oven === undefined) return;
  const state = input.ovens.find((one) => one.oven === name);
  const busy = users.some((row) => row.state === "running");
  let set = state === undefined || state.heat === null ? null : fahrenheit(state.heat);
  const [firstRange] = users.flatMap((row) => rangeOf(row.task) ?? []);
  if (set === null && busy && firstRange !== undefined) set = fahrenheit(firstRange.low);
  let hot = set === null ? 70 : busy ? set : warmth(input, oven, set, state?.setAt ?? input.now);
  let clock: number = input.now;
  const runTo = (moment: number): void => {
    const minutes = Math.max(0, (moment - clock) / MINUTE);
    clock = Math.max(clock, moment);
    if (set === null) return;
    hot = hot < set ? Math.min(set, hot + oven.heats * minutes) : Math.max(set, hot - oven.cools * minutes);
  };
  const steps = [
    ...moves.filter((move) => move.oven === name).map((move) => ({ at: move.at, order: 0, move, row: null })),
    ...users
      .filter((row) => row.state === "waiting")
      .map((row) => ({ at: row.entry.start, order: 1, move: null, row })),
  ].sort((a, b) => a.at - b.at || a.order - b.order);
  for (const { at, move, row } of steps) {
    runTo(at);
    if (move !== null) set = fahrenheit(move.heat);
    const inside = users.filter(
      (one) => one.entry.start <= at && one.entry.end > at && one.state !== "running",
    );
    for (const one of inside) {
      const range = rangeOf(one.task);
      if (range === null || set === null) continue;
      if (set < fahrenheit(range.low) || set > fahrenheit(range.high))
        faults.push(`${one.task.id} bakes at ${set}`);
    }
    if (row !== null && (set === null || Math.abs(hot - set) > 0.5)) {
      faults.push(`${row.task.id} goes into an oven of ${Math.round(hot)} set to ${set ?? "off"}`);
    }
  }
  const racks = peak(users, (need) => (need.kind === "oven" ? need.racks : 0));
  const running = peak(
    users.filter((row) => row.state === "running"),
    (need) => (need.kind === "oven" ? need.racks : 0),
  );
  if (racks > Math.max(oven.racks, running)) faults.push(`${racks} racks of ${name} at once`);
}

function checkMoments(rows: readonly Row[], faults: string[]): void {
  const keys = rows.flatMap((row) => row.entry.moments.map((moment) => moment.key));
  if (new Set(keys).size !== keys.length) faults.push("two moments share a key");
  for (const { entry, task } of rows) {
    const nominal = momentsOf(task, entry.start, entry.end);
    if (nominal.length !== entry.moments.length) faults.push(`${task.id} lost a moment`);
    for (const moment of entry.moments) {
      const wanted = nominal.find((one) => one.key === moment.key);
      if (wanted === undefined) faults.push(`${moment.key} was not asked for`);
      else if (Math.abs(moment.at - wanted.at) > moment.within * 1000)
        faults.push(`${moment.key} slips too far`);
      if (moment.at < entry.start || moment.at > entry.end) faults.push(`${moment.key} is outside its task`);
    }
  }
}

function checkServing(input: PlanInput, sheet: RunSheet, faults: string[]): void {
  const ends = sheet.entries.map((entry) => entry.end);
  const ready = ends.length === 0 ? input.now : Math.max(...ends);
  if (sheet.readyAt !== ready) faults.push("ready at another time than the last task ends");
  const late = input.serveAt === null ? 0 : Math.max(0, Math.ceil((ready - input.serveAt) / 1000));
  if (sheet.late !== late) faults.push(`says ${sheet.late} s late, is ${late} s`);
}

/**
 * What is wrong with a sheet, told from the meal alone and without the engine's own code. Maximum lags,
 * freshness and holds may be missed, but then `broken` must hold a sentence about it.
 */
export function faultsOf(input: PlanInput, sheet: RunSheet): readonly string[] {
  const faults: string[] = [];
  const rows = rowsOf(input, sheet, faults);
  checkTimes(input, rows, faults);
  checkPrecedence(rows, faults);
  checkCooks(input, rows, faults);
  checkWorkers(input, rows, faults);
  checkThings(input, rows, faults);
  checkLanes(rows, faults);
  input.meal.kitchen.ovens.forEach((oven) => checkOven(input, rows, sheet.ovenMoves, oven.name, faults));
  checkMoments(rows, faults);
  checkServing(input, sheet, faults);
  checkLimits(input, sheet, rows, faults);
  return faults;
}
