import { grammarFor } from "../../core/talk/grammar-for.ts";
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

/** All of it. */
export const words: Words = { respond, respondUnsure, grammarFor };
