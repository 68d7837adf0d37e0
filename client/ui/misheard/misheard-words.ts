import type { CameTo, Misheard } from "../../../core/speech/misheard/misheard.ts";
import { numberWords } from "../../../core/units/number-words.ts";
import type { Instant } from "../../../core/units/quantity.ts";

/** What came of it, as the end of a line. */
export function cameToWords(cameTo: CameTo): string {
  switch (cameTo) {
    case "nothing":
      return "came to nothing";
    case "asked-back":
      return "was asked back";
    case "taken-back":
      return "you took it back";
  }
}

/** What the ear made of it. */
export const heardWords = ({ heard }: Pick<Misheard, "heard">): string =>
  heard === "" ? "Heard only its name" : `Heard “${heard}”`;

/** How many sentences, spelt out while that is short. */
export const sentenceCount = (count: number): string =>
  `${count <= 12 ? numberWords(count) : count} ${count === 1 ? "sentence" : "sentences"}`;

/** Days before this one, by the clock on the wall: 0 on the same evening. */
export function daysBefore(at: Instant, now: Instant, utcOffsetMinutes: number): number {
  const dayOf = (moment: Instant): number => Math.floor((moment + utcOffsetMinutes * 60_000) / 86_400_000);
  return dayOf(now) - dayOf(at);
}

/** "6:34 pm", "yesterday, 6:34 pm", "5 days ago, 6:34 pm". */
export function whenWords(clock: string, days: number): string {
  if (days <= 0) return clock;
  return days === 1 ? `yesterday, ${clock}` : `${days} days ago, ${clock}`;
}
