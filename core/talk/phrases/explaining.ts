import type { OneMore } from "../intent.ts";
import { mention } from "../intent.ts";
import type { PhraseEntry } from "../phrase-entry.ts";
import { plain } from "../phrase-entry.ts";

const topic = "asking";

/** "What if I had one more burner", for each thing of which the plan can tell. */
const oneMore = (thing: OneMore, said: string, example: string | null): PhraseEntry =>
  plain({ type: "WhatIfOneMore", thing }, topic, "meal", example, [
    `what if (i|we) had (one more|another) ${said}`,
    `what if there was (one more|another) ${said}`,
    `would (one more|another) ${said} help`,
    `would we be sooner with (one more|another) ${said}`,
    `what would (one more|another) ${said} (bring|change)`,
    `how much sooner with (one more|another) ${said}`,
  ]);

/** Questions about the plan: why it is so, and how it would be otherwise. */
export const explainingPhrases: readonly PhraseEntry[] = [
  plain(
    { type: "WhyNow" },
    topic,
    "meal",
    "why now",
    [
      "why now",
      "why (this|that) [step] now",
      "why (this|that) [step] first",
      "why (do|should) i do (this|that|it) now",
      "why is (this|that|it) (next|first|so urgent)",
      "what is the hurry",
      "does (this|that|it) have to be now",
    ],
    ["why", "why so soon", "why this"],
  ),
  {
    intent: "WhyNotYet",
    topic,
    occasion: "meal",
    example: "why not start the lentils",
    says: [
      "why not start the {target} [now]",
      "why not the {target} (now|first)",
      "why (do|should) i not start the {target} [now]",
      "when (do|can|should) i start the {target}",
      "what (does|do) the {target} wait for",
      "what (is|are) the {target} waiting for",
      "what (holds|keeps) the {target} back",
    ],
    typed: ["why not [the] {target}", "why is the {target} not next", "can i start the {target} [now]"],
    make: ({ target }) => ({ type: "WhyNotYet", target: mention(target) }),
  },
  {
    intent: "WhatIfServeAt",
    topic,
    occasion: "meal",
    example: "what if we eat at seven",
    says: [
      "what if we (eat|ate) at {clock}",
      "what if (dinner|supper|lunch) (is|was) at {clock}",
      "what (happens|changes) if we eat at {clock}",
      "(can|could) we eat at {clock}",
      "(can|could) (dinner|supper|lunch) be at {clock}",
      "would we be late for {clock}",
    ],
    typed: ["what if {clock}", "(can|could) we eat by {clock}"],
    make: ({ clock }) => ({ type: "WhatIfServeAt", minute: clock }),
  },
  {
    intent: "WhatIfServeAt",
    topic,
    occasion: "always",
    example: null,
    says: [],
    typed: ["what if we (eat|ate) at", "(can|could) we eat at"],
    make: () => ({ type: "WhatIfServeAt", minute: null }),
  },
  oneMore("burner", "burner", "what if I had one more burner"),
  oneMore("rack", "oven rack", null),
  oneMore("oven", "oven", null),
  oneMore("cook", "(cook|pair of hands|helper)", "what if I had another pair of hands"),
  plain(
    { type: "WhatAhead" },
    topic,
    "meal",
    "what can I do ahead",
    [
      "what can i do ahead [today]",
      "what can i (make|prepare) ahead [today]",
      "what can be (done|made|prepared) ahead",
      "is there anything (to|i can) do ahead",
      "can i (do|make|prepare) anything ahead",
      "which steps can i do ahead",
    ],
    ["ahead", "make ahead", "what keeps"],
  ),
];
