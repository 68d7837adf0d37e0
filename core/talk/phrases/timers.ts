import { mention } from "../intent.ts";
import type { Intent } from "../intent.ts";
import type { PhraseEntry } from "../phrase-entry.ts";
import { plain } from "../phrase-entry.ts";
import { aboutOne } from "./one-timer.ts";
import type { Slots } from "../slots.ts";
import { minutes } from "../../units/quantity.ts";

const topic = "timers";

const begin = ({ span, length, number, name }: Slots): Intent => ({
  type: "StartTimer",
  // "Set a timer for twelve": a bare figure is minutes, and the answer reads it back.
  span: span ?? length ?? (number === null ? null : { low: minutes(number), high: minutes(number) }),
  name: mention(name),
});

const more = ({ extra, span, timer }: Slots): Intent => ({
  type: "Lengthen",
  timer: mention(timer),
  by: (extra ?? span)?.high ?? null,
});

const less = ({ span, timer }: Slots): Intent => ({
  type: "Shorten",
  timer: mention(timer),
  by: span?.high ?? null,
});

/** Timers: started, asked, changed, ended. */
export const timerPhrases: readonly PhraseEntry[] = [
  {
    intent: "StartTimer",
    topic,
    occasion: "always",
    example: "set a timer for twelve minutes",
    says: [
      "(set|start|give me) a timer for {span} [for [the] {name}]",
      "(set|start) a {length} timer [for [the] {name}]",
      "(set|start) a timer for the {name} for {span}",
      "(set|start) (a|the) {name} timer for {span}",
      "time {span} [for [the] {name}]",
      "time the {name} for {span}",
      "(remind|call|tell) me in {span}",
      "{span} [on the clock] for [the] {name}",
    ],
    typed: [
      "{span} timer [for [the] {name}]",
      "timer {span} [for [the] {name}]",
      "timer for {span} [for [the] {name}]",
      "{name} timer {span}",
      "{name} {span}",
      "{span}",
      "{span} {name} timer",
      "(set|start) timer [for] {span} [for [the] {name}]",
      "(set|start) a timer for {span} to [the] {name}",
      "(set|start) a timer for {number}",
      "(set|start) a {number} timer",
      "new timer {span}",
    ],
    make: begin,
  },
  {
    intent: "StartTimer",
    topic,
    occasion: "always",
    example: null,
    says: ["(set|start|give me) a timer", "(set|start) a timer for the {name}", "time the {name}"],
    typed: [
      "(set|start) a timer for",
      "timer",
      "timer for [the] {name}",
      "new timer",
      "(set|start) (a|the) {name} timer",
      "{name} timer",
    ],
    make: begin,
  },
  ...aboutOne(
    "AskTimer",
    ["how long is left", "how long for the flatbreads"],
    [
      "how long [is left]",
      "how (long|much longer) [to go]",
      "how much time [is left]",
      "how is the timer [doing]",
      "what is left on the timer",
      "when does the timer (ring|go off)",
      "time left",
    ],
    [
      "how (long|much longer|much time) for [the] {timer} [timer]",
      "how (long|much time) is left (on|for) [the] {timer} [timer]",
      "(check|what about) [the] {timer} timer",
      "how is the {timer} timer [doing]",
      "when (is|are) [the] {timer} (done|ready)",
      "when does the {timer} timer (ring|go off)",
    ],
    [
      ["remaining", "check timer", "check the timer"],
      [
        "how (long|much longer|much time) (on|until|till) [the] {timer} [timer]",
        "how (long|much longer) do [the] {timer} (need|take)",
        "time left (on|for) [the] {timer} [timer]",
        "when will [the] {timer} be (done|ready)",
      ],
    ],
  ),
  plain(
    { type: "AskTimers" },
    topic,
    "always",
    "which timers are on",
    [
      "which timers are (on|running)",
      "what timers are (on|running)",
      "(list|tell me|read me) [all] [the] timers",
      "how are [all] the timers [doing]",
      "what is (ticking|on the clock)",
      "what timers do i have",
      "how long is left on (everything|all the timers)",
      "check [all] the timers",
    ],
    ["timers", "all timers", "show timers", "show [all] the timers"],
  ),
  {
    intent: "Lengthen",
    topic,
    occasion: "timers",
    example: "two more minutes for the flatbreads",
    says: [
      "{extra}",
      "{extra} (on|for|to) [the] {timer} [timer]",
      "(give it|give them|add) {extra}",
      "(add|give) {span} to [the] {timer} [timer]",
      "give [the] {timer} {extra}",
      "add {span} [to the timer]",
    ],
    typed: [
      "plus {span}",
      "{extra} [(on|for) [the] {timer} [timer]]",
      "(lengthen|extend) [the] {timer} [timer] by {span}",
      "(lengthen|extend) [the] timer by {span}",
      "(it|they) need {extra}",
      "[the] {timer} (need|needs) {extra}",
    ],
    make: more,
  },
  {
    intent: "Lengthen",
    topic,
    occasion: "timers",
    example: "it needs longer",
    says: [
      "not yet",
      "(it|they) (needs|need) (longer|more time)",
      "(it is|they are) not (done|ready) [yet]",
      "[the] {timer} (needs|need) (longer|more time)",
      "a little longer",
      "more time",
    ],
    typed: [
      "(lengthen|extend) [the] {timer} [timer]",
      "(lengthen|extend) [the] timer",
      "longer",
      "[the] {timer} (is|are) not (done|ready) [yet]",
    ],
    make: more,
  },
  {
    intent: "Shorten",
    topic,
    occasion: "timers",
    example: "take two minutes off the flatbreads",
    says: [
      "take {span} off",
      "take {span} off [the] {timer} [timer]",
      "take {span} off the timer",
      "{span} less [on [the] {timer} [timer]]",
      "(shorten|cut) [the] {timer} [timer] by {span}",
      "(shorten|cut) the timer by {span}",
      "subtract {span} [from [the] {timer} [timer]]",
      "remove {span} [from [the] {timer} [timer]]",
    ],
    typed: [
      "minus {span}",
      "{span} less for [the] {timer} [timer]",
      "{span} shorter",
      "{span} off [the] {timer} [timer]",
    ],
    make: less,
  },
  {
    intent: "Shorten",
    topic,
    occasion: "timers",
    example: null,
    says: ["shorten the timer", "shorten [the] {timer} timer"],
    typed: ["shorten", "shorten [the] {timer}", "less time"],
    make: less,
  },
];
