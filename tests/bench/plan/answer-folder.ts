import { readSet } from "../../scheduling/instances.ts";
import { bestKnown } from "../../scheduling/read-optima.ts";
import { print } from "../figures.ts";
import { answer, warmUp } from "./answer.ts";

/**
 * Answers each instance of a folder: one line of JSON an instance, and nothing else on the standard output.
 * "optimum" is the best end known (of "a..b" it is b), null where it is unknown or there is no timetable.
 */
export function answerFolder(folder: string, ms: number): void {
  const { instances, complaints } = readSet(folder);
  for (const complaint of complaints) process.stderr.write(`${complaint}\n`);
  if (instances.length === 0) process.stderr.write(`There is no instance in ${folder}.\n`);
  if (complaints.length > 0 || instances.length === 0) process.exitCode = 1;
  if (instances.length > 0) warmUp();
  for (const instance of instances) {
    const found = answer(instance, { ms });
    print(
      JSON.stringify({
        instance: instance.name,
        optimum: instance.optimum === null ? null : bestKnown(instance.optimum),
        found: found.end,
        ms: Math.round(found.ms),
        schedules: found.schedules,
      }),
    );
  }
}
