import type { Kitchen } from "./kitchen.ts";

const everyMs = 1000;

/**
 * Lets the clock act in the kitchen once a second, so that what is due is called even when no device is awake.
 * @param report is told a sentence when the log cannot be written, once for each new sentence
 * @returns what stops it
 */
export function startTicking(kitchen: Kitchen, report: (sentence: string) => void): () => void {
  let lastReport = "";
  const timer = setInterval(() => {
    const ticked = kitchen.tick();
    const said = ticked.ok ? "" : ticked.sentence;
    if (said !== "" && said !== lastReport) report(said);
    lastReport = said;
  }, everyMs);
  return () => clearInterval(timer);
}
