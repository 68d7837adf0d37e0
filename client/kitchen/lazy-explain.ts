import type { Explain, Kitchen } from "../../core/talk/model.ts";
import type { watchDinner } from "./watch-dinner.ts";

/** What speaks of the plan beyond its calls. */
export interface LateVoice {
  /** What explains the plan; null until it is here. */
  readonly explaining: () => Pick<Kitchen, "explain">;
  readonly close: () => void;
}

/**
 * Fetches after the page stands what explains the plan, and what tells that dinner slips.
 * @param start begins the watch over dinner, and returns what ends it
 */
export function lazyExplain(start: (watch: typeof watchDinner) => () => void): LateVoice {
  let explain: Explain | null = null;
  let isOpen = true;
  let stop = (): void => undefined;
  void Promise.all([import("../../core/talk/explain-plan.ts"), import("./watch-dinner.ts")]).then(
    ([{ explainPlan }, { watchDinner }]) => {
      explain = explainPlan;
      if (isOpen) stop = start(watchDinner);
    },
    // Then the caller says that it cannot explain the plan yet.
    () => undefined,
  );
  return {
    explaining: () => ({ explain }),
    close: () => {
      isOpen = false;
      stop();
    },
  };
}
