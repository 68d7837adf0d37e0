import { mention } from "../intent.ts";
import type { PhraseEntry } from "../phrase-entry.ts";
import { plain } from "../phrase-entry.ts";
import { aboutOne } from "./one-timer.ts";

const topic = "timers";

/** Timers that are running: paused, ended, renamed, and their rings answered. */
export const timerChangePhrases: readonly PhraseEntry[] = [
  ...aboutOne(
    "PauseTimer",
    ["pause the timer", "pause the flatbreads timer"],
    ["pause [the|that] timer", "(freeze|hold|halt) the timer", "put the timer on hold"],
    ["pause [the] {timer} [timer]", "(freeze|hold|halt) the {timer} timer", "put the {timer} timer on hold"],
    [["pause"], []],
  ),
  ...aboutOne(
    "ResumeTimer",
    ["resume the timer", "resume the flatbreads timer"],
    [
      "resume [the|that] timer",
      "(unfreeze|continue) the timer",
      "let the timer (run|go on)",
      "go on with the timer",
    ],
    [
      "resume [the] {timer} [timer]",
      "(unfreeze|continue) the {timer} timer",
      "let the {timer} timer (run|go on)",
    ],
    [
      ["unpause timer", "unpause the timer"],
      ["unpause [the] {timer} [timer]", "continue [the] {timer}"],
    ],
  ),
  ...aboutOne(
    "RestartTimer",
    ["restart the timer", "restart the flatbreads timer"],
    [
      "restart [the|that] timer",
      "start the timer (again|over)",
      "reset the timer",
      "the timer (again|once more)",
    ],
    ["restart [the] {timer} [timer]", "start the {timer} timer (again|over)", "reset the {timer} timer"],
    [["restart", "reset"], ["reset [the] {timer}"]],
  ),
  ...aboutOne(
    "StopTimer",
    ["stop the timer", "stop the flatbreads timer"],
    [
      "stop [the|that] timer",
      "(end|finish) the timer",
      "turn (off the timer|the timer off)",
      "that is enough of that timer",
    ],
    ["stop [the] {timer} timer", "(end|finish) the {timer} timer", "turn off the {timer} timer"],
    [["stop timing"], ["stop [the] {timer}", "turn the {timer} timer off"]],
  ),
  ...aboutOne(
    "CancelTimer",
    ["cancel the timer", "cancel the flatbreads timer"],
    ["cancel [the|that] timer", "(delete|drop) the timer", "get rid of the timer", "i do not need the timer"],
    ["cancel the {timer} [timer]", "(delete|drop) the {timer} timer", "get rid of the {timer} timer"],
    [
      ["cancel", "remove the timer", "clear the timer"],
      ["cancel {timer}", "remove [the] {timer} timer", "clear [the] {timer} timer"],
    ],
  ),
  plain(
    { type: "CancelAllTimers" },
    topic,
    "timers",
    "cancel all timers",
    [
      "cancel (all|all the|every) (timers|timer)",
      "(stop|end|delete|drop) (all|all the) timers",
      "get rid of all [the] timers",
      "turn off all [the] timers",
      "no more timers",
    ],
    ["clear [all] [the] timers", "cancel everything", "remove all [the] timers", "cancel timers"],
  ),
  {
    intent: "RenameTimer",
    topic,
    occasion: "timers",
    example: "call the timer flatbreads",
    says: [
      "(rename|call) the timer [to] [the] {name}",
      "rename the {timer} timer to [the] {name}",
      "call the {timer} timer [the] {name}",
      "name the timer [the] {name}",
      "(call|name) (it|that timer) [the] {name}",
      "that timer is [for] the {name}",
    ],
    typed: ["rename {timer} to {name}", "rename it [to] {name}"],
    make: ({ timer, name }) => ({ type: "RenameTimer", timer: mention(timer), name: mention(name) }),
  },
  {
    intent: "RenameTimer",
    topic,
    occasion: "timers",
    example: null,
    says: ["rename the timer", "rename the {timer} timer"],
    typed: ["rename {timer}", "rename"],
    make: ({ timer }) => ({ type: "RenameTimer", timer: mention(timer), name: null }),
  },
  {
    intent: "HearRing",
    topic,
    occasion: "ringing",
    example: null,
    says: ["i (hear|heard) [the] {timer}"],
    typed: ["[the] {timer} heard", "(stop|answer) [the] {timer} ring"],
    make: ({ timer }) => ({ type: "HearRing", timer: mention(timer) }),
  },
  plain(
    { type: "HearRing", timer: null },
    topic,
    "ringing",
    "I hear it",
    [
      "i (hear|heard) it",
      "i (hear|heard) you",
      "i am coming",
      "i am on it",
      "okay",
      "got it",
      "i have got it",
      "thank you",
      "i am looking",
      "i will look",
    ],
    [
      "ok",
      "i hear",
      "thanks",
      "alright",
      "all right",
      "i know",
      "heard",
      "stop ringing",
      "stop the ring",
      "coming",
      "stop beeping",
      "stop the alarm",
    ],
  ),
];
