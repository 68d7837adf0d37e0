import type { PlanInput, RunSheet } from "../../../core/plan/model.ts";
import type { Row } from "./row.ts";

const MINUTE = 60_000;

/** The last moment at which somebody takes up what a step made; the table, where nobody does. */
function takenUp(rows: readonly Row[], row: Row, table: number): number {
  const { dish, step } = row.task;
  const same = rows
    .filter((one) => one.task.dish.id === dish.id && one.task.step.id === step.id)
    .map((one) => one.task.id);
  const takers = (ids: readonly string[]) =>
    rows.filter((one) => one.task.step !== step && one.task.after.some((link) => ids.includes(link.task)));
  const own = takers([row.task.id]);
  const all = own.length > 0 ? own : takers(same);
  return all.length === 0 ? table : Math.max(...all.map((one) => one.entry.start));
}

/** Each maximum lag, freshness limit and hold that is missed must be told in a sentence that names its step. */
export function checkLimits(input: PlanInput, sheet: RunSheet, rows: readonly Row[], faults: string[]): void {
  const table = Math.max(sheet.readyAt, input.serveAt ?? 0);
  const told = (row: Row, dish: string) =>
    sheet.broken.some((sentence) => sentence.includes(row.task.step.title) && sentence.includes(dish));
  for (const row of rows) {
    const { entry, task, state } = row;
    const { endsBeforeServing: close, hold } = task.step;
    if (state === "done") continue;
    for (const link of task.after) {
      const before = rows.find((one) => one.task.id === link.task);
      if (before === undefined || link.atMost === null || state === "running") continue;
      const isMissed = entry.start > before.entry.end + link.atMost * 1000;
      if (isMissed && !told(row, task.dish.name))
        faults.push(`${task.id} silently comes late after ${link.task}`);
    }
    if (close !== null && entry.end < table - close * 1000 && !told(row, task.dish.name)) {
      faults.push(`${task.id} silently ends long before serving`);
    }
    const wait = takenUp(rows, row, table) - entry.end;
    if (hold !== null && wait - hold * 1000 >= MINUTE && !told(row, ""))
      faults.push(`${task.id} silently waits`);
  }
}
