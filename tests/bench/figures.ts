import { availableParallelism, loadavg } from "node:os";

/** Prints one line. */
export const print = (line: string): void => void process.stdout.write(`${line}\n`);

/** Prints a figure beside the one to reach, and whether it is reached. */
export function printFigure(what: string, measured: string, toReach: string, isReached: boolean): void {
  print(
    `${what.padEnd(46)} ${measured.padEnd(24)} (to reach: ${toReach})  ${isReached ? "reached" : "missed"}`,
  );
}

/** The value below which a share (0 to 1) of them lies; not a number where there are none. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}

/** The middle one. */
export const median = (values: readonly number[]): number => quantile(values, 0.5);

/** A share as text: "97.3 %". */
export const percent = (part: number, whole: number): string => `${((100 * part) / whole).toFixed(1)} %`;

/** Processor time of some work, in ms, with what it gave. */
export async function timed<T>(
  work: () => T | Promise<T>,
): Promise<{ readonly ms: number; readonly value: T }> {
  const began = process.cpuUsage();
  const value = await work();
  const used = process.cpuUsage(began);
  return { ms: (used.user + used.system) / 1000, value };
}

/** Prints how busy the machine is: on one that also does other work the figures are too high. */
export function printMachine(): void {
  const busy = loadavg()[0] ?? 0;
  print(
    `${availableParallelism()} cores, load ${busy.toFixed(1)} before this bench: above 1 the figures are too high`,
  );
}
