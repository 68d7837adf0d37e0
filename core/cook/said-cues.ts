import { between } from "../units/quantity.ts";
import type { Instant } from "../units/quantity.ts";
import type { Cue } from "./calls.ts";

/** What one device has said of its cues: key -> when first, and how often. */
export type SaidCues = ReadonlyMap<string, { readonly at: Instant; readonly times: number }>;

/** A device that has said nothing yet. */
export const nothingSaid: SaidCues = new Map();

/** The cues to say at `now`, in the order of their urgency: new ones, and second times that are due. */
export function toSay(cues: readonly Cue[], said: SaidCues, now: Instant): readonly Cue[] {
  return cues.filter((cue) => {
    if (cue.dueAt > now) return false;
    const before = said.get(cue.key);
    if (before === undefined) return true;
    return before.times === 1 && cue.againAfter !== null && between(before.at, now) >= cue.againAfter;
  });
}

/** Notes that these cues were said (or that an answer has told the same). */
export function afterSaying(said: SaidCues, cues: readonly Cue[], now: Instant): SaidCues {
  if (cues.length === 0) return said;
  const next = new Map(said);
  for (const cue of cues) {
    const before = next.get(cue.key);
    next.set(cue.key, { at: before?.at ?? now, times: (before?.times ?? 0) + 1 });
  }
  return next;
}
