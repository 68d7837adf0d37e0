import { type EarCheck, sentenceNow } from "../../../core/speech/check/ear-check.ts";
import { outcomeWords } from "../../../core/speech/check/finding-words.ts";
import type { EarState } from "../../kitchen/ear-model.ts";
import { CheckPips } from "./check-pips.tsx";
import { LiveBar } from "./level-bar.tsx";
import type { RunningCheck } from "./use-ear-check.ts";
import { capital } from "../../../core/units/capital.ts";

interface CheckSentenceProps {
  readonly running: RunningCheck;
  readonly check: EarCheck;
  readonly ear: EarState;
}

/** One sentence to say: it goes on by itself. */
export function CheckSentence({ running, check, ear }: CheckSentenceProps) {
  const at = sentenceNow(check);
  const words = check.sentences[at]?.words.join(" ") ?? "";
  const last = check.phase.kind === "shown" ? check.results.at(-1)?.outcome : undefined;
  const isRight = last?.kind === "right";
  return (
    <div class="check">
      <CheckPips check={check} />
      <p class="check-say">Say, from where you cook:</p>
      <p class="check-sentence">{`“${capital(check.address)}, ${words}”`}</p>
      <LiveBar voice={running.voice} room={running.room} />
      <p class={`check-news ${last === undefined ? "" : isRight ? "is-right" : "is-wrong"}`} role="status">
        {last === undefined ? earNews(ear) : outcomeWords(last, check.address)}
        {last !== undefined && !isRight && last.kind !== "left-out" && " Say it once more, or wait."}
      </p>
      <div class="check-keys">
        <button type="button" class="key" onClick={() => running.act("again")}>
          Say it again
        </button>
        <button type="button" class="key" onClick={() => running.act("leave-out")}>
          Leave it out
        </button>
        <button type="button" class="key key-quiet" onClick={() => running.act("finish")}>
          That is enough
        </button>
      </div>
      <p class="hint">Nothing that is said here is carried out. It goes on by itself.</p>
    </div>
  );
}

function earNews({ kind }: EarState): string {
  switch (kind) {
    case "hearing":
      return "Hearing you.";
    case "thinking":
      return "One moment.";
    case "muted":
      return "The caller speaks; wait until it has finished.";
    case "deaf":
      return "A recording plays; wait until it has finished.";
    case "off":
    case "loading":
    case "waiting":
    case "open":
    case "trouble":
      return "Listening.";
  }
}
