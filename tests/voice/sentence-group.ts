import type { MomentName } from "./evening-moments.ts";

/** What is said at one moment of the evening, under the heading that it is reported by. */
export type SentenceGroup = {
  readonly name: string;
  readonly moment: MomentName;
  readonly sentences: readonly string[];
};
