import { useState } from "preact/hooks";
import type { Misheard } from "../../../core/speech/misheard/misheard.ts";
import { MisheardCorrection } from "./misheard-correction.tsx";
import { cameToWords, heardWords } from "./misheard-words.ts";

interface ItemProps {
  readonly misheard: Misheard;
  readonly when: string;
  readonly isPlaying: boolean;
  readonly onPlay: () => void;
  readonly onStop: () => void;
  readonly onCorrect: (meant: string | null) => void;
  readonly onDelete: () => void;
}

/** One misheard sentence. */
export function MisheardItem({ misheard, when, isPlaying, ...on }: ItemProps) {
  const [isCorrecting, setCorrecting] = useState(false);
  const { heard, meant, cameTo } = misheard;
  const correct = (sentence: string | null): void => {
    on.onCorrect(sentence);
    setCorrecting(false);
  };
  const name = `${when}, ${heardWords(misheard)}`;
  return (
    <li class="misheard-item">
      <p class="misheard-words">
        <span class="misheard-when">{when}</span>
        <b>{heardWords(misheard)}</b>
        <span class="misheard-came">{cameToWords(cameTo)}</span>
        {meant !== null && (
          <span class="misheard-meant">
            {meant === heard ? "→ and that was right" : `→ you said “${meant}”`}
          </span>
        )}
      </p>
      <div class="choice">
        <button
          type="button"
          class="key key-small"
          aria-label={`${isPlaying ? "Stop" : "Play"}: ${name}`}
          onClick={isPlaying ? on.onStop : on.onPlay}
        >
          {isPlaying ? "Stop" : "Play"}
        </button>
        <button
          type="button"
          class="key key-small"
          aria-expanded={isCorrecting}
          aria-label={`Correct: ${name}`}
          onClick={() => setCorrecting(!isCorrecting)}
        >
          Correct
        </button>
        <button
          type="button"
          class="key key-small key-danger"
          aria-label={`Delete: ${name}`}
          onClick={on.onDelete}
        >
          Delete
        </button>
      </div>
      {isCorrecting && <MisheardCorrection misheard={misheard} onCorrect={correct} />}
    </li>
  );
}
