import { parentPort, workerData } from "node:worker_threads";
import { betterCourse } from "../../core/plan/better-course.ts";
import type { LaidStep } from "../../core/cook/events.ts";
import type { CourseJob } from "./course-messages.ts";

const port = parentPort;
if (port === null) throw new Error("course-worker.ts runs only as a worker thread.");
const { input, reach } = workerData as CourseJob;
const course = betterCourse(input, reach);
const steps: readonly LaidStep[] | null =
  course === null ? null : [...course].map(([task, step]) => ({ task, ...step }));
port.postMessage(steps);
