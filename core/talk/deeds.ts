import type { Session } from "../cook/session.ts";

/** Deeds that a running step may ask for. */
export const deeds = [
  "stirred",
  "flipped",
  "turned",
  "shaken",
  "tossed",
  "basted",
  "brushed",
  "skimmed",
  "scraped",
  "checked",
  "tasted",
  "lid off",
  "lid on",
  "uncovered",
  "covered",
  "rotated",
  "mashed",
  "seen to",
] as const;

/** Said of anything. */
const ofAnything: ReadonlySet<string> = new Set(["checked", "seen to", "tasted"]);

/** "Stirred" answers "stir the greens": the deed begins as the order does. */
export function asksForDeed(order: string, deed: string): boolean {
  const stem = deed.slice(0, Math.max(3, deed.length - 3));
  const words = order.toLowerCase();
  return words.split(/\s+/).some((word) => word.startsWith(stem)) || words.includes(deed);
}

/** Those that something on the fire or in hand asks for, and those that are said of anything. */
export function deedsAtHand({ tasks, progress, focus }: Session): readonly string[] {
  const atHand = tasks.filter(({ id }) => progress.get(id)?.state === "running" || id === focus?.task);
  const orders = atHand.flatMap(({ step }) => [step.title, ...step.attend.map((moment) => moment.do)]);
  return deeds.filter((deed) => ofAnything.has(deed) || orders.some((order) => asksForDeed(order, deed)));
}
