import { plain } from "../phrase-entry.ts";
import type { PhraseEntry } from "../phrase-entry.ts";

const topic = "asking";

/** What is to be prepared before the steps call for it. */
export const misePhrases: readonly PhraseEntry[] = [
  plain(
    { type: "AskMise", work: "all" },
    topic,
    "meal",
    "what do I prepare",
    [
      "what do i prepare",
      "what (do i|should i|can i) get ready",
      "what should i prepare",
      "what is [still] to be prepared",
      "what is left to prepare",
    ],
    ["prepare", "preparation", "mise [en place]", "what to prepare"],
  ),
  plain(
    { type: "AskMise", work: "cutting" },
    topic,
    "meal",
    "what is to be chopped",
    ["what is [still] to be (chopped|cut)", "what do i (chop|cut)", "what is left to (chop|cut)"],
    ["chopping", "to chop"],
  ),
  plain(
    { type: "AskMise", work: "washing" },
    topic,
    "meal",
    "what is to be washed",
    ["what is [still] to be (washed|rinsed)", "what do i (wash|rinse)"],
    ["washing", "to wash"],
  ),
];
