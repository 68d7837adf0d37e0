import type { sayAfterSleep } from "../../core/talk/after-sleep.ts";
import type { Explain, Kitchen } from "../../core/talk/model.ts";
import type { askOpenNotes } from "./ask-notes.ts";
import type { askStandIns } from "./ask-stand-ins.ts";
import type { watchDinner } from "./watch-dinner.ts";

/** What speaks of the plan beyond its calls. */
export interface LateVoice {
  /** What explains the plan; null until it is here. */
  readonly explaining: () => Pick<Kitchen, "explain">;
  /** What is said after a sleep of the device; null until it is here, and where there is nothing to say. */
  readonly afterSleep: (...evening: Parameters<typeof sayAfterSleep>) => string | null;
  readonly close: () => void;
}

/** Begins the watch over dinner, and asks for notes and for what may stand in; returns what ends it all. */
export type StartWatches = (late: {
  readonly watchDinner: typeof watchDinner;
  readonly askOpenNotes: typeof askOpenNotes;
  readonly askStandIns: typeof askStandIns;
  readonly explain: Explain;
}) => () => void;

/**
 * Fetches after the page stands what explains the plan, what tells that dinner slips, what asks as a meal begins, and
 * what is said after a sleep.
 * @param start begins the watch over dinner and asks; it returns what ends both
 */
export function lazyExplain(start: StartWatches): LateVoice {
  let explain: Explain | null = null;
  let sayAsleep: typeof sayAfterSleep | null = null;
  let isOpen = true;
  let stop = (): void => undefined;
  void Promise.all([
    import("../../core/talk/explain-plan.ts"),
    import("./watch-dinner.ts"),
    import("../../core/talk/after-sleep.ts"),
    import("./ask-notes.ts"),
    import("./ask-stand-ins.ts"),
  ]).then(
    ([{ explainPlan }, { watchDinner }, after, { askOpenNotes }, { askStandIns }]) => {
      explain = explainPlan;
      sayAsleep = after.sayAfterSleep;
      if (isOpen) stop = start({ watchDinner, askOpenNotes, askStandIns, explain: explainPlan });
    },
    // Then the caller says that it is not ready for that yet.
    () => undefined,
  );
  return {
    explaining: () => ({ explain }),
    afterSleep: (...evening) => sayAsleep?.(...evening) ?? null,
    close: () => {
      isOpen = false;
      stop();
    },
  };
}
