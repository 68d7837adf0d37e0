import { endOfAll, type Network } from "../../../core/plan/engine/network.ts";
import { search, type Found } from "../../../core/plan/engine/search.ts";
import { faultsOf } from "../../scheduling/check-timetable.ts";
import { madeUpMeal } from "../../scheduling/made-up-networks.ts";
import type { Optimum } from "../../scheduling/read-optima.ts";

/** Something to be planned, and what is known of its shortest end. */
export interface Question {
  readonly name: string;
  readonly network: Network;
  readonly optimum: Optimum | null;
}

/** What the engine found in its time. */
export interface Answer {
  /** When all ends; null where no timetable was found, or a wrong one. */
  readonly end: number | null;
  readonly proven: Found["proven"];
  readonly schedules: number;
  /** Wall clock, of the search alone. */
  readonly ms: number;
  /** Processor time of the same, which a busy machine does not lengthen as much. */
  readonly processorMs: number;
}

/** What the engine claims and cannot be, beside the faults of its timetable. */
function falseClaims({ network, optimum }: Question, found: Found): readonly string[] {
  const claims: string[] = [];
  const least = optimum?.kind === "exact" ? optimum.end : optimum?.kind === "between" ? optimum.least : null;
  const isPossible = optimum !== null && optimum.kind !== "impossible";
  if (found.timetable !== null) {
    const end = endOfAll(network, found.timetable.starts);
    if (end !== found.end) claims.push(`it says that all ends at ${found.end}, and it ends at ${end}`);
    if (optimum?.kind === "impossible") claims.push("it has a timetable and is known to have none");
    if (least !== null && end < least)
      claims.push(`it ends at ${end}, and ${least} is proved to be the least`);
    const isShortest = optimum?.kind !== "exact" || end === optimum.end;
    if (found.proven === "optimal" && !isShortest) claims.push(`${end} is called optimal and is not`);
  }
  if (found.proven === "impossible" && (isPossible || found.timetable !== null))
    claims.push("it is called impossible and is not");
  return claims;
}

/** Faults go to the error output, a sentence each, and make the bench fail. */
export function complain(name: string, faults: readonly string[]): void {
  for (const fault of faults) process.stderr.write(`${name}: ${fault}.\n`);
  if (faults.length > 0) process.exitCode = 1;
}

/** Meals that no mark asks for, and how long they are planned before anything is measured. */
const warmUpSeeds = [201, 202, 203, 204];
const warmUpMs = 500;

/** Lets the runtime compile the engine first: a kitchen's program has run for a while when dinner slips. */
export function warmUp(): void {
  for (const seed of warmUpSeeds) answer({ ...madeUpMeal(seed), optimum: null }, { ms: warmUpMs });
}

/**
 * Asks the engine and checks all that it says.
 * @param limits how many schedules it may build, and how long it may take by the clock on the wall
 */
export function answer(
  question: Question,
  limits: { readonly schedules?: number; readonly ms: number; readonly seed?: number },
): Answer {
  const [began, used] = [performance.now(), process.cpuUsage()];
  const found = search(question.network, {
    seed: limits.seed ?? 1,
    schedules: limits.schedules ?? Number.MAX_SAFE_INTEGER,
    isOver: () => performance.now() - began >= limits.ms,
  });
  const ms = performance.now() - began;
  const { user, system } = process.cpuUsage(used);
  const faults = found.timetable === null ? [] : faultsOf(question.network, found.timetable);
  complain(question.name, [...faults, ...falseClaims(question, found)]);
  const end = found.timetable === null || faults.length > 0 ? null : found.end;
  return { end, proven: found.proven, schedules: found.schedules, ms, processorMs: (user + system) / 1000 };
}
