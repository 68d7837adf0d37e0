import type { OpenUtterance } from "./open-utterance.ts";
import type { Verdict } from "./verdict.ts";

/** What an utterance comes to, whatever its sentence sounds like. @param isBroken the sound itself broke off */
export function finalVerdict(
  judged: Verdict,
  { framesWanted }: Pick<OpenUtterance, "framesWanted">,
  isBroken: boolean,
): Verdict {
  // Kept from before the caller fell silent, and nobody has gone on: its own last word, coming back from the walls.
  if (framesWanted > 0) return { kind: "none", why: "chatter" };
  // A link that was lost has taken the rest with it: "ten m..." may have been minutes or seconds.
  return isBroken && judged.kind === "command" ? { kind: "none", why: "doubtful" } : judged;
}
