import type { Helper } from "../../plan/worker.ts";
import { mention } from "../intent.ts";
import type { PhraseEntry } from "../phrase-entry.ts";
import { plain } from "../phrase-entry.ts";

const topic = "moving";

/** What is said of a helper who is there, and what they say themselves: they share the cook's microphone. */
const ofHelper = (helper: Helper, isShown: boolean): readonly PhraseEntry[] => [
  plain(
    { type: "HelperDone", helper },
    topic,
    helper,
    isShown ? `${helper} done` : null,
    [`${helper} (done|finished)`, `(the|my) ${helper} (is|has) (done|finished)`, `the ${helper} next`],
    [`${helper} is (done|finished)`, `${helper} next`],
  ),
  plain(
    { type: "AskHelper", helper },
    topic,
    helper,
    isShown ? `what does the ${helper} do` : null,
    [
      `what does (the|my) ${helper} do [now]`,
      `what is (the|my) ${helper} doing [now]`,
      `what (can|should) (the|my) ${helper} do [now]`,
      `what is there for (the|my) ${helper}`,
    ],
    [`what about (the|my) ${helper}`],
  ),
  ...handingOver(helper, isShown),
  plain(
    { type: "HelperGoes", helper },
    topic,
    helper,
    isShown ? `the ${helper} has left` : null,
    [`(the|my) ${helper} (has left|is leaving|is gone|has gone|is going)`],
    [`${helper} (left|gone)`],
  ),
];

const handingOver = (helper: Helper, isShown: boolean): readonly PhraseEntry[] => [
  plain(
    { type: "HandOver", target: null, helper },
    topic,
    helper,
    isShown ? `give that to the ${helper}` : null,
    [
      `give (this|that|it) to (the|my) ${helper}`,
      `(the|my) ${helper} (does|takes) (this|that|it)`,
      `let (the|my) ${helper} do (this|that|it)`,
    ],
  ),
  {
    intent: "HandOver",
    topic,
    occasion: helper,
    example: null,
    says: [
      `give the {target} to (the|my) ${helper}`,
      `(the|my) ${helper} (does|takes) the {target}`,
      `let (the|my) ${helper} do the {target}`,
    ],
    typed: [`the {target} is for (the|my) ${helper}`],
    make: ({ target }) => ({ type: "HandOver", target: mention(target), helper }),
  },
];

/** Two or three who cook together. */
export const helperPhrases: readonly PhraseEntry[] = [
  plain(
    { type: "HelperComes" },
    topic,
    "meal",
    "someone is helping me",
    [
      "someone is helping me",
      "(someone|somebody) is here to help [me]",
      "i have (a helper|got help|help now)",
      "(a|another) helper is here",
      "i have another helper",
      "i am not alone any more",
    ],
    ["helper", "helper here", "add a helper"],
  ),
  ...ofHelper("helper", true),
  ...ofHelper("second helper", false),
  plain({ type: "HelperGoes", helper: null }, topic, "meal", "I am alone again", [
    "i am (alone|on my own|by myself) [again|now]",
    "everybody has left",
  ]),
];
