import type { Reach } from "../../core/plan/better-course.ts";
import type { PlanInput } from "../../core/plan/model.ts";

/** What the thread is started with: one evening to find a better course for. It answers once and ends. */
export interface CourseJob {
  readonly input: PlanInput;
  readonly reach: Reach;
}
