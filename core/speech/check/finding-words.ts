import { numberWords } from "../../units/number-words.ts";
import type { EarFindings } from "./ear-findings.ts";
import type { Outcome } from "./judge-sentence.ts";
import { capital } from "../../units/capital.ts";

/** What became of one sentence, as it is shown under it. */
export function outcomeWords(outcome: Outcome, address: string): string {
  switch (outcome.kind) {
    case "right":
      return "Heard right.";
    case "address-lost":
      return `The sentence was heard, but “${address}” before it was not.`;
    case "torn":
      return `Not sure: ${outcome.heard.map((reading) => `“${reading}”`).join(" or ")}.`;
    case "other":
      return `Heard “${outcome.heard}” instead.`;
    case "nothing":
      return "Nothing was heard.";
    case "left-out":
      return "Left out.";
  }
}

/** What a check found and what follows from it, each as one plain sentence, the most important first. */
export function findingWords(findings: EarFindings, address: string): readonly string[] {
  return [
    heardWords(findings),
    voiceWords(findings),
    roomWords(findings),
    changeWords(findings),
    addressWords(findings, address),
  ].filter((sentence) => sentence !== "");
}

function heardWords({ asked, right }: EarFindings): string {
  if (asked === 0) return "No sentence was said, so nothing was found out.";
  if (right === asked)
    return asked === 1
      ? "The one sentence was heard right."
      : `All ${numberWords(asked)} sentences were heard right.`;
  const ofThem = `of ${numberWords(asked)} ${asked === 1 ? "sentence" : "sentences"}`;
  return `${capital(right === 0 ? "none" : numberWords(right))} ${ofThem} ${right <= 1 ? "was" : "were"} heard right.`;
}

function voiceWords({ voice, room, asked }: EarFindings): string {
  switch (voice) {
    case "unheard":
      if (asked === 0) return "";
      return room === "loud" || room === "drowning"
        ? "No voice was heard over the noise."
        : "No voice was heard: see that the right microphone is plugged in and nothing covers it, then check again.";
    case "very-soft":
      return "Your voice comes in very softly: come closer, or turn the microphone up in the device's settings.";
    case "soft":
      return "Your voice comes in softly.";
    case "good":
      return "Your voice comes in well.";
    case "loud":
      return "Your voice comes in loudly.";
    case "overloading":
      return "Your voice overloads the microphone: turn it down in the device's settings, or stand farther away.";
  }
}

function roomWords({ room }: EarFindings): string {
  switch (room) {
    case "unknown":
      return "";
    case "quiet":
      return "The room is quiet.";
    case "noisy":
      return "There is some noise in the room; your voice stands well above it.";
    case "loud":
      return "The room is loud: turn the fan or tap down, or come closer, when you are not heard.";
    case "drowning":
      return "The room is too loud to hear you: turn the fan or tap down, or come closer, then check again.";
  }
}

function changeWords({ proposal }: EarFindings): string {
  switch (proposal.kind) {
    case "unknown":
      return "";
    case "as-it-is":
      return "The ear suits you as it is: nothing needs to change.";
    case "back-to-usual":
      return "Kept, this forgets what an earlier check has set: your voice does without it.";
    case "too-noisy":
      return "It is not made more sensitive: that would lift the noise as well.";
    case "tune": {
      const { gainDb } = proposal.tuning;
      if (gainDb > 0) return "Kept, this makes the ear more sensitive to you.";
      return gainDb < 0
        ? "Kept, this makes the ear less sensitive, so that your voice has room."
        : "Kept, this lets softer speech count.";
    }
  }
}

function addressWords({ addressLost, offers }: EarFindings, address: string): string {
  if (offers.length === 0) return "";
  return `“${address}” was missed in ${numberWords(addressLost)} sentences: another name may be heard better.`;
}
