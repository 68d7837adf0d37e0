import type { Signal } from "@preact/signals";
import type { Settings } from "../../kitchen/settings.ts";

interface TuningKeysProps {
  readonly settings: Signal<Settings>;
  readonly onCheckEar: () => void;
}

/** Begins a check of the ear, and forgets what an earlier one has set. */
export function TuningKeys({ settings, onCheckEar }: TuningKeysProps) {
  const { tuning } = settings.value;
  return (
    <>
      <p class="hint">
        {tuning === null ? "Not heard well? Try five sentences." : tuningWords(tuning.gainDb)}
      </p>
      <div class="choice">
        <button type="button" class="key key-small" onClick={onCheckEar}>
          Check the ear: two minutes
        </button>
        {tuning !== null && (
          <button
            type="button"
            class="key key-small"
            onClick={() => {
              settings.value = { ...settings.value, tuning: null };
            }}
          >
            Forget what the check set
          </button>
        )}
      </div>
    </>
  );
}

function tuningWords(gainDb: number): string {
  if (gainDb === 0) return "A check has set how softly you may speak.";
  return `A check has made the ear ${Math.abs(gainDb)} dB ${gainDb > 0 ? "more" : "less"} sensitive.`;
}
