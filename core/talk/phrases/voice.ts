import { inMinutes } from "../../units/quantity.ts";
import type { PhraseEntry } from "../phrase-entry.ts";
import { plain } from "../phrase-entry.ts";

const topic = "voice";

/** The caller's own voice. */
export const voicePhrases: readonly PhraseEntry[] = [
  plain({ type: "Louder" }, topic, "always", "louder", [
    "louder",
    "speak (louder|up)",
    "a (bit|little) louder",
    "turn (it|your voice|the voice) up",
    "turn up (the volume|your voice)",
    "i can not hear you",
    "talk louder",
    "volume up",
  ], ["too quiet", "you are too quiet", "raise your voice"]),
  plain({ type: "Softer" }, topic, "always", "softer", [
    "softer",
    "speak (softer|more softly|more quietly)",
    "a (bit|little) (softer|quieter)",
    "turn (it|your voice|the voice) down",
    "turn down (the volume|your voice)",
    "not so loud",
    "quieter",
    "volume down",
  ], ["too loud", "you are too loud", "lower your voice"]),
  plain({ type: "Slower" }, topic, "always", "slower", [
    "slower",
    "speak (slower|more slowly)",
    "a (bit|little) slower",
    "slow down",
    "not so fast",
    "talk (slower|more slowly)",
  ], ["too fast", "you are too fast"]),
  plain({ type: "Faster" }, topic, "always", "faster", [
    "faster",
    "speak (faster|more quickly)",
    "a (bit|little) faster",
    "speed up",
    "not so slow",
    "talk (faster|more quickly)",
  ], ["too slow", "you are too slow", "quicker"]),
  {
    intent: "QuietFor", topic, occasion: "always", example: "quiet for ten minutes",
    says: [
      "[be|keep|stay] quiet for {span}",
      "no talking for {span}",
      "do not (speak|talk) for {span}",
      "(silence|peace) for {span}",
      "leave me alone for {span}",
      "say nothing for {span}",
    ],
    typed: ["(mute|hush|shush) for {span}", "(mute|hush) {span}", "quiet {span}"],
    make: ({ span }) => ({ type: "QuietFor", minutes: span === null ? null : inMinutes(span.high) }),
  },
  {
    intent: "QuietFor", topic, occasion: "always", example: null,
    says: [],
    typed: ["(be|keep|stay) quiet for", "quiet for", "mute"],
    make: () => ({ type: "QuietFor", minutes: null }),
  },
  plain({ type: "SpeakAgain" }, topic, "always", "speak again", [
    "speak again",
    "you can (speak|talk) [again|now]",
    "you may (speak|talk) [again|now]",
    "talk to me [again]",
    "start (speaking|talking) [again]",
    "no more silence",
  ], ["unmute", "speak", "talk", "voice on"]),
  plain({ type: "StopTalking" }, topic, "always", "stop talking", [
    "stop talking",
    "stop",
    "be quiet",
    "quiet",
    "that is enough",
    "enough",
    "hush",
    "silence",
  ], ["shut up", "shush", "stop it", "stop speaking", "shh"]),
];
