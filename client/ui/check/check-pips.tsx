import type { EarCheck } from "../../../core/speech/check/ear-check.ts";
import { sentenceNow } from "../../../core/speech/check/ear-check.ts";
import type { Outcome } from "../../../core/speech/check/judge-sentence.ts";

const marks: Readonly<Record<Outcome["kind"], readonly [mark: string, words: string]>> = {
  right: ["✓", "heard right"],
  "address-lost": ["×", "without its name"],
  torn: ["?", "not sure"],
  other: ["×", "heard as something else"],
  nothing: ["×", "not heard"],
  "left-out": ["–", "left out"],
};

/** How far the check is: one mark for each sentence. */
export function CheckPips({ check }: { readonly check: EarCheck }) {
  const now = check.phase.kind === "over" ? -1 : sentenceNow(check);
  return (
    <ol class="pips" aria-label="The sentences so far">
      {check.sentences.map(({ shows }, at) => {
        const outcome = check.results[at]?.outcome.kind ?? null;
        const [mark, words] =
          outcome === null ? [String(at + 1), at === now ? "now" : "to come"] : marks[outcome];
        return (
          <li
            key={shows}
            class={`pip ${outcome === null ? "" : `pip-${outcome}`} ${at === now ? "pip-now" : ""}`}
          >
            <span aria-hidden="true">{mark}</span>
            <span class="unseen">{`${at + 1}: ${words}`}</span>
          </li>
        );
      })}
    </ol>
  );
}
