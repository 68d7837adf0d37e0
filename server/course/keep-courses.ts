import { planInputOf } from "../../core/cook/run-sheet.ts";
import { cooksAt } from "../../core/plan/hands.ts";
import type { PlanInput, Task } from "../../core/plan/model.ts";
import type { CookedEvening, Kitchen } from "../kitchen/kitchen.ts";
import type { CourseFinder } from "./course-finder.ts";

/** What of a meal makes its course: when this is another, one is looked for anew. */
const workOf = (tasks: readonly Task[]) =>
  tasks.map(({ id, pace, after, batch, step }) => {
    const { hands, time, needs, attend, hold, ahead, endsBeforeServing } = step;
    return [id, pace, after, batch, hands, time, needs, attend, hold, ahead, endsBeforeServing];
  });

const workIn = (evening: CookedEvening | null): string | null =>
  evening === null
    ? null
    : JSON.stringify([evening.session, cooksAt(evening.state), workOf(evening.state.tasks)]);

/** Looks for a better course whenever a meal begins or changes, and has the kitchen lay what it finds. */
class Keeper {
  readonly #kitchen: Kitchen;
  readonly #finder: CourseFinder;
  readonly #report: (sentence: string) => void;
  #known: string | null;
  #said = "";

  constructor(kitchen: Kitchen, finder: CourseFinder, report: (sentence: string) => void) {
    this.#kitchen = kitchen;
    this.#finder = finder;
    this.#report = report;
    // An evening that is taken up again goes on as it was.
    this.#known = workIn(kitchen.evening());
  }

  look(): void {
    const evening = this.#kitchen.evening();
    const work = workIn(evening);
    if (work === this.#known) return;
    this.#known = work;
    if (evening === null) void this.#finder.stop();
    else
      this.#find(evening.session, planInputOf(evening.state, evening.at)).catch((problem: unknown) => {
        this.#tell(`No better plan was looked for: ${String(problem)}.`);
      });
  }

  async #find(session: string, input: PlanInput): Promise<void> {
    const found = await this.#finder.find(input);
    if (!found.ok) this.#tell(found.error);
    else if (found.value !== null) {
      const laid = this.#kitchen.layCourse(session, found.value);
      if (!laid.ok) this.#tell(laid.sentence);
    }
  }

  /** Once for each new sentence. */
  #tell(sentence: string): void {
    if (sentence !== this.#said) this.#report(sentence);
    this.#said = sentence;
  }
}

/**
 * Keeps the course of the evening as good as a search can make it; the server answers all the while.
 * @param report is told a sentence when a search failed or the log cannot be written, once for each new sentence
 * @returns what stops it
 */
export function keepCourses(
  kitchen: Kitchen,
  finder: CourseFinder,
  report: (sentence: string) => void,
): { readonly close: () => Promise<void> } {
  const keeper = new Keeper(kitchen, finder, report);
  const stop = kitchen.listen(() => keeper.look());
  return {
    close: async () => {
      stop();
      await finder.stop();
    },
  };
}
