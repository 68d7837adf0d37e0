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
  readonly grammarFor: typeof grammarFor;
}

/** Who understands a question can also answer it: the answers come with the words. */
const answering = (kitchen: Kitchen): Kitchen => ({ ...kitchen, explain: explainPlan });

/** All of it. */
export const words: Words = {
  respond: (text, kitchen) => respond(text, answering(kitchen)),
  respondUnsure: (readings, kitchen) => respondUnsure(readings, answering(kitchen)),
  grammarFor,
};
