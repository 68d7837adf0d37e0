import { useState } from "preact/hooks";
import { mention } from "../../../core/talk/intent.ts";
import { spokenDuration } from "../../../core/units/duration.ts";
import { minutes } from "../../../core/units/quantity.ts";
import type { OnDeed } from "../parts/deed.ts";
import { Sheet } from "../parts/sheet.tsx";

/** Lengths worth a key of their own, in minutes; any other can be said or typed. */
const lengths = [1, 2, 3, 5, 8, 10, 12, 15, 20, 30, 45, 60] as const;

interface NewTimerProps {
  readonly onDeed: OnDeed;
  readonly onClose: () => void;
}

/** A timer of the cook's own, in one touch; a name may be given first. */
export function NewTimer({ onDeed, onClose }: NewTimerProps) {
  const [name, setName] = useState("");
  const start = (count: number): void => {
    const length = minutes(count);
    const called = name.trim() === "" ? null : name.trim();
    onDeed({
      label: "New timer",
      intent: { type: "StartTimer", span: { low: length, high: length }, name: mention(called) },
      words: `timer for ${spokenDuration(length)}${called === null ? "" : ` for ${called}`}`,
    });
    onClose();
  };
  return (
    <Sheet title="New timer" kind="card" onClose={onClose}>
      <label class="field">
        <span>Name it, if you like</span>
        <input
          type="text"
          maxLength={40}
          value={name}
          autocomplete="off"
          onInput={(event) => setName(event.currentTarget.value)}
        />
      </label>
      <div class="length-keys">
        {lengths.map((count) => (
          <button key={count} type="button" class="key key-length" onClick={() => start(count)}>
            <b>{count}</b> min
          </button>
        ))}
      </div>
      <p class="hint">Any other length: say or type "timer for seven minutes for the rolls".</p>
    </Sheet>
  );
}
