import type { Topic } from "./intent.ts";

/** The chapters of what can be said, as they are named aloud and on the page. */
export const topics: readonly { readonly topic: Topic; readonly name: string; readonly about: string }[] = [
  { topic: "moving", name: "moving", about: "Going from step to step" },
  { topic: "timers", name: "timers", about: "Timers" },
  { topic: "asking", name: "questions", about: "Asking" },
  { topic: "eating", name: "diet", about: "May I eat it, and what is in it" },
  { topic: "left", name: "leftovers", about: "What is left, and the fridge" },
  { topic: "list", name: "shopping", about: "What to buy" },
  { topic: "voice", name: "the voice", about: "The caller's voice" },
];
