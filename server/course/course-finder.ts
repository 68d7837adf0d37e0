import { Worker } from "node:worker_threads";
import type { LaidStep } from "../../core/cook/events.ts";
import { parseCourse } from "../../core/cook/parse.ts";
import type { Reach } from "../../core/plan/better-course.ts";
import type { PlanInput } from "../../core/plan/model.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import type { CourseJob } from "./course-messages.ts";

/** Looks for better courses, one evening at a time, beside the server's own work. */
export interface CourseFinder {
  /** null: none better, or another evening was asked for meanwhile. Error: one sentence that says why none was looked for. */
  readonly find: (input: PlanInput) => Promise<Result<readonly LaidStep[] | null, string>>;
  /** Gives up what is being looked for. */
  readonly stop: () => Promise<void>;
}

/** How far a search goes, and how long it may take: by then the cook is further on, and nothing fits any more. */
export interface CourseLimits {
  readonly reach: Reach;
  readonly limitMs: number;
}

/** One to three seconds for fifty steps, far less for a few: most searches end sooner, with a proof. */
const usual: CourseLimits = { reach: { seed: 1, schedules: 30_000 }, limitMs: 60_000 };

/** Starts the real thread; it loads in about half a second. */
export function startCourseWorker(job: CourseJob): Worker {
  return new Worker(new URL("./course-worker-start.mjs", import.meta.url), { workerData: job });
}

type Outcome = Result<readonly LaidStep[] | null, string>;

class Finder implements CourseFinder {
  readonly #limits: CourseLimits;
  readonly #startWorker: (job: CourseJob) => Worker;
  #giveUp: (() => Promise<void>) | null = null;

  constructor(limits: CourseLimits, startWorker: (job: CourseJob) => Worker) {
    this.#limits = limits;
    this.#startWorker = startWorker;
  }

  find(input: PlanInput): Promise<Outcome> {
    void this.stop();
    const { reach, limitMs } = this.#limits;
    return new Promise((resolve) => {
      const worker = this.#startWorker({ input, reach });
      const end = async (outcome: Outcome): Promise<void> => {
        clearTimeout(timer);
        if (this.#giveUp === giveUp) this.#giveUp = null;
        resolve(outcome);
        await worker.terminate();
      };
      const giveUp = (): Promise<void> => end(ok(null));
      const fail = (why: string): Promise<void> => end(err(`No better plan was looked for: ${why}.`));
      const timer = setTimeout(() => void fail(`it took longer than ${limitMs} ms`), limitMs);
      // A search must keep no process alive.
      timer.unref();
      worker.unref();
      this.#giveUp = giveUp;
      worker.once("message", (message: unknown) => void end(parseCourse(message)));
      worker.once("error", (error) => void fail(String(error)));
      worker.once("exit", (code) => void fail(`the thread ended with code ${code}`));
    });
  }

  async stop(): Promise<void> {
    await this.#giveUp?.();
  }
}

/** @param startWorker injectable, so that a test can end the thread in mid-search */
export function courseFinder(
  limits: CourseLimits = usual,
  startWorker: (job: CourseJob) => Worker = startCourseWorker,
): CourseFinder {
  return new Finder(limits, startWorker);
}
