import type { Grammar } from "../../core/speech/grammar.ts";
import { keepingRules, noGrammar } from "../../core/speech/grammar-change.ts";
import { explainPlan } from "../../core/talk/explain-plan.ts";
import { grammarFor } from "../../core/talk/grammar-for.ts";
import type { Kitchen } from "../../core/talk/model.ts";
import { respond } from "../../core/talk/respond.ts";
import { respondUnsure } from "../../core/talk/respond-unsure.ts";

/**
 * What it takes to understand a sentence, spoken or typed. No touch needs it, and it weighs a tenth of the page:
 * so it comes after the page, and nothing that the page shows first may import it.
 */
export interface Words {
  readonly respond: typeof respond;
  readonly respondUnsure: typeof respondUnsure;
  /** What can be said now; what could be said before in the very same rules, and nothing new is the very same grammar. */
  readonly grammarFor: (kitchen: Kitchen, before: Grammar | null) => Grammar;
}

/** Who understands a question can also answer it: the answers come with the words. */
const answering = (kitchen: Kitchen): Kitchen => ({ ...kitchen, explain: explainPlan });

/** All of it. */
export const words: Words = {
  respond: (text, kitchen) => respond(text, answering(kitchen)),
  respondUnsure: (readings, kitchen) => respondUnsure(readings, answering(kitchen)),
  grammarFor: (kitchen, before) => keepingRules(before ?? noGrammar, grammarFor(kitchen)),
};
