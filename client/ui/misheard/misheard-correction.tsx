import { useState } from "preact/hooks";
import { longestMeantLetters, meaning, type Misheard } from "../../../core/speech/misheard/misheard.ts";

interface CorrectionProps {
  readonly misheard: Misheard;
  /** null: what the cook said is not known any more. */
  readonly onCorrect: (meant: string | null) => void;
}

/** What the cook said: one of the likely sentences, or typed. */
export function MisheardCorrection({ misheard, onCorrect }: CorrectionProps) {
  const { heard, likely, meant } = misheard;
  const [typed, setTyped] = useState(meant ?? "");
  const sentences = heard === "" ? likely : [...likely, heard];
  return (
    <div class="misheard-correction" role="group" aria-label="What did you say?">
      <p>What did you say?</p>
      {sentences.length > 0 && (
        <ul class="choice" aria-label="You may have said">
          {sentences.map((sentence) => (
            <li key={sentence}>
              <button
                type="button"
                class="key key-small"
                aria-pressed={sentence === meant}
                onClick={() => onCorrect(sentence)}
              >
                {sentence}
              </button>
            </li>
          ))}
        </ul>
      )}
      <form
        class="field field-row"
        onSubmit={(event) => {
          event.preventDefault();
          onCorrect(meaning(typed));
        }}
      >
        <label>
          <span>Or type it, without its name before it</span>
          <input
            type="text"
            maxLength={longestMeantLetters}
            value={typed}
            autocomplete="off"
            onInput={(event) => setTyped(event.currentTarget.value)}
          />
        </label>
        <button type="submit" class="key">
          That was it
        </button>
      </form>
    </div>
  );
}
