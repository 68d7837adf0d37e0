import type { Candidate } from "./improve.ts";
import { endOf, takenUpAt } from "./judge.ts";
import type { PlanInput } from "./model.ts";
import type { Problem } from "./problem.ts";
import { inDish, spokenLimit, spokenMinutes, titleOf } from "./say.ts";

/** Less than this is not worth a word. */
const MINUTE_MS = 60_000;

function lateFollowers(
  problem: Problem,
  made: Candidate,
  index: number,
  input: PlanInput,
): readonly string[] {
  const act = problem.acts[index];
  if (act === undefined || act.running !== null) return [];
  const start = made.schedule[index]?.start ?? 0;
  return act.task.after.flatMap((link) => {
    const arc = (problem.before[index] ?? []).find((one) => problem.acts[one.from]?.task.id === link.task);
    const over = input.progress.get(link.task);
    const limit =
      over?.state === "done" ? link.atMost : arc === undefined || arc.atMost === null ? null : link.atMost;
    if (limit === null) return [];
    const end =
      over?.state === "done"
        ? over.at - input.now
        : arc === undefined
          ? start
          : endOf(problem, made.schedule, arc.from);
    if (start - end <= limit * 1000) return [];
    const before = input.tasks.find((task) => task.id === link.task);
    const name = before === undefined ? "the step before" : titleOf(before);
    const asked = spokenLimit(limit * 1000);
    return [
      `${inDish(act.task)} should follow ${name} ${asked}, but comes ${spokenMinutes(start - end)} after it.`,
    ];
  });
}

function waitSentences(problem: Problem, made: Candidate, index: number, table: number): readonly string[] {
  const act = problem.acts[index];
  if (act === undefined) return [];
  const { endsBeforeServing: close, hold } = act.task.step;
  const early = table - endOf(problem, made.schedule, index);
  const wait = takenUpAt(problem, made.schedule, index, table) - endOf(problem, made.schedule, index);
  const sentences: string[] = [];
  if (close !== null && early > close * 1000) {
    const limit = spokenMinutes(close * 1000);
    sentences.push(
      `${inDish(act.task)} should end within ${limit} of serving, but ends ${spokenMinutes(early)} before.`,
    );
  }
  if (hold !== null && wait - hold * 1000 >= MINUTE_MS) {
    const limit = spokenMinutes(hold * 1000);
    sentences.push(
      `What comes of ${titleOf(act.task)} for the ${act.task.dish.name} waits ${spokenMinutes(wait)}, and keeps only ${limit}.`,
    );
  }
  return sentences;
}

/** Each limit that the plan misses, as one spoken sentence; lateness first. Milliseconds from now throughout. */
export function brokenLimits(
  problem: Problem,
  made: Candidate,
  input: PlanInput,
  lateMs: number,
): readonly string[] {
  const table = Math.max(made.verdict.ready, input.serveAt === null ? 0 : input.serveAt - input.now);
  const late =
    lateMs >= MINUTE_MS ? [`Dinner will be ${spokenMinutes(lateMs)} later than you asked for.`] : [];
  const limits = problem.acts.flatMap((_, index) => [
    ...lateFollowers(problem, made, index, input),
    ...waitSentences(problem, made, index, table),
  ]);
  return [...late, ...limits];
}
