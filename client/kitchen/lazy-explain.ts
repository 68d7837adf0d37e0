import type { Explain, Kitchen } from "../../core/talk/model.ts";

/** What explains the plan, fetched after the page stands; null until it is here. */
export function lazyExplain(): () => Pick<Kitchen, "explain"> {
  let here: Explain | null = null;
  void import("../../core/talk/explain-plan.ts").then(
    ({ explainPlan }) => {
      here = explainPlan;
    },
    // Then the caller says that it cannot explain the plan yet.
    () => undefined,
  );
  return () => ({ explain: here });
}
