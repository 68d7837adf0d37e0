import type { Lag, Network, Use } from "../../core/plan/engine/network.ts";
import { err, ok, type Result } from "../../core/units/result.ts";

/** What is wrong with a file; caught in `readInstance`, which puts the file's name before it. */
class Malformed extends Error {}

const linesOf = (text: string): readonly string[] => text.split(/\r?\n/).map((line) => line.trim());
const isNumbers = (line: string): boolean => /^-?\d+(\s+-?\d+)*$/.test(line);

/** The whole numbers of a line, at least so many of them. */
function numbersOf(line: string | undefined, atLeast: number, what: string): readonly number[] {
  const numbers = line === undefined || line === "" ? [] : line.split(/\s+/).map(Number);
  if (line === undefined || numbers.length < atLeast || !numbers.every(Number.isInteger))
    throw new Malformed(`the line with ${what} should hold at least ${atLeast} whole numbers`);
  return numbers;
}

/** A value that a well-formed file has at this place. */
function there<T>(value: T | undefined, what: string): T {
  if (value === undefined) throw new Malformed(`${what} is missing`);
  return value;
}

/** An act of a file: how long, and how much of each thing all the while. */
interface Row {
  readonly length: number;
  readonly amounts: readonly number[];
}

function networkOf(rows: readonly Row[], lags: readonly Lag[], capacities: readonly number[]): Network {
  const uses = rows.map(({ length, amounts }) =>
    amounts.flatMap((amount, thing): readonly Use[] =>
      amount > 0 && length > 0 ? [{ thing, amount, from: 0, to: length }] : [],
    ),
  );
  for (const { from, to } of lags) {
    if (rows[from] === undefined || rows[to] === undefined)
      throw new Malformed(`a lag leads from act ${from} to act ${to}, and there are ${rows.length} acts`);
  }
  return {
    lengths: rows.map((row) => row.length),
    earliest: rows.map(() => 0),
    latest: rows.map(() => Infinity),
    lags,
    capacities,
    uses,
    tending: rows.map(() => []),
    ovens: [],
    bakings: rows.map(() => []),
  };
}

/** The lines of numbers that follow a heading, to the first other line after them. */
function section(lines: readonly string[], heading: RegExp): readonly string[] {
  const head = lines.findIndex((line) => heading.test(line));
  if (head < 0) throw new Malformed(`the part ${heading.source} is missing`);
  const body = lines.slice(head + 1);
  const first = body.findIndex(isNumbers);
  const length = body.slice(Math.max(0, first)).findIndex((line) => !isNumbers(line));
  return first < 0 ? [] : body.slice(first, length < 0 ? undefined : first + length);
}

/** PSPLIB, single mode: precedence by end to start, so the lag is the length of the one before. */
function psplib(lines: readonly string[]): Network {
  const declared = lines.map((line) => /^jobs\b.*:\s*(\d+)$/.exec(line)?.[1]).find((count) => count);
  const count = Number(there(declared, "the number of jobs"));
  const capacities = numbersOf(
    section(lines, /^RESOURCEAVAILABILITIES/)[0],
    1,
    "the resource availabilities",
  );
  const rows = section(lines, /^REQUESTS\/DURATIONS/).map((line): Row => {
    const [, mode, length, ...amounts] = numbersOf(line, 3 + capacities.length, "a job's duration");
    if (mode !== 1) throw new Malformed("a job has several modes, and only single-mode files are read");
    return { length: there(length, "a duration"), amounts: amounts.slice(0, capacities.length) };
  });
  const precedence = section(lines, /^PRECEDENCE RELATIONS/);
  if (rows.length !== count || precedence.length !== count)
    throw new Malformed(`${count} jobs are announced, and ${precedence.length} and ${rows.length} follow`);
  const lags = precedence.flatMap((line): readonly Lag[] => {
    const [job = 0, , successors = 0, ...after] = numbersOf(line, 3, "a job's successors");
    if (after.length !== successors) throw new Malformed(`job ${job} has not the ${successors} successors`);
    return after.map((to) => ({ from: job - 1, to: to - 1, least: rows[job - 1]?.length ?? 0 }));
  });
  return networkOf(rows, lags, capacities);
}

/** ProGen/max: lags from start to start, a negative one is a maximum lag the other way round. */
function progenMax(lines: readonly string[]): Network {
  const full = lines.filter((line) => line !== "");
  const [acts = 0, things = 0] = numbersOf(full[0], 2, "the number of acts and of resources");
  const count = acts + 2;
  if (full.length < 2 + 2 * count)
    throw new Malformed(
      `${acts} acts are announced, which takes ${2 + 2 * count} lines, and ${full.length} follow`,
    );
  const lags = full.slice(1, 1 + count).flatMap((line): readonly Lag[] => {
    const bare = line.replace(/\[[^\]]*\]/g, " ").trim();
    const [from = 0, , successors = 0, ...after] = numbersOf(bare, 3, "an act's successors");
    const least = [...line.matchAll(/\[\s*(-?\d+)\s*\]/g)].map((found) => Number(found[1]));
    if (after.length !== successors || least.length !== successors)
      throw new Malformed(`act ${from} has not ${successors} successors with a lag each`);
    return after.map((to, index) => ({ from, to, least: least[index] ?? 0 }));
  });
  const rows = full.slice(1 + count, 1 + 2 * count).map((line): Row => {
    const [, , length = 0, ...amounts] = numbersOf(line, 3 + things, "an act's duration");
    return { length, amounts: amounts.slice(0, things) };
  });
  const capacities = numbersOf(full[1 + 2 * count], things, "the capacities").slice(0, things);
  return networkOf(rows, lags, capacities);
}

/** A job shop: pairs of machine and duration, a line a job. */
function jobShop(lines: readonly string[]): Network {
  const [head, ...jobLines] = lines.filter((line) => line !== "" && !line.startsWith("#"));
  const [jobs = 0, machines = 0] = numbersOf(head, 2, "the number of jobs and of machines");
  if (jobLines.length !== jobs)
    throw new Malformed(`${jobs} jobs are announced, and ${jobLines.length} follow`);
  const lags: Lag[] = [];
  const rows = jobLines.flatMap((line, job) => {
    const pairs = numbersOf(line, 2 * machines, `job ${job + 1}`);
    return Array.from({ length: machines }, (_, step): Row => {
      const [machine = -1, length = 0] = pairs.slice(2 * step, 2 * step + 2);
      if (machine < 0 || machine >= machines)
        throw new Malformed(`job ${job + 1} asks for machine ${machine}`);
      const act = job * machines + step;
      if (step + 1 < machines) lags.push({ from: act, to: act + 1, least: length });
      return { length, amounts: Array.from({ length: machines }, (_, one) => Number(one === machine)) };
    });
  });
  return networkOf(
    rows,
    lags,
    Array.from({ length: machines }, () => 1),
  );
}

function formatOf(file: string, lines: readonly string[]): ((lines: readonly string[]) => Network) | null {
  const head = lines.find((line) => line !== "" && !line.startsWith("#")) ?? "";
  if (lines.some((line) => line.startsWith("PRECEDENCE RELATIONS"))) return psplib;
  if (/\.sch$/i.test(file) || (isNumbers(head) && lines.some((line) => line.includes("[")))) return progenMax;
  return isNumbers(head) && head.split(/\s+/).length === 2 ? jobShop : null;
}

/** The endings of the files that `readInstance` may know. */
export const isInstanceFile = (file: string): boolean => /\.(sm|sch|txt)$/i.test(file);

/** "j301_1" for "j301_1.sm": what an instance is called in the table of optima and in figures. */
export const instanceName = (file: string): string => file.replace(/\.(sm|sch|txt)$/i, "");

/**
 * An instance of PSPLIB (.sm), ProGen/max (.sch) or of a job shop (.txt) as a network; which of them it is tell
 * its name and what stands in it. The dummy first and last act of the first two stay, with length 0. All sources
 * count in one abstract unit of time. The error is one sentence that names the file.
 */
export function readInstance(file: string, text: string): Result<Network, string> {
  const lines = linesOf(text);
  const read = formatOf(file, lines);
  if (read === null) return err(`${file} is neither a PSPLIB, nor a ProGen/max, nor a job shop instance.`);
  try {
    return ok(read(lines));
  } catch (error) {
    if (error instanceof Malformed) return err(`${file} cannot be read: ${error.message}.`);
    throw error;
  }
}
