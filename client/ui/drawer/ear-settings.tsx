import { useState } from "preact/hooks";
import type { Signal } from "@preact/signals";
import type { Settings } from "../../kitchen/settings.ts";
import { Choice } from "../parts/choice.tsx";

const ways = [
  ["addressed", "After its name"],
  ["open", "To every sentence"],
  ["tap", "After a touch"],
] as const;

/** When the kitchen listens, and the words that call it. */
export function EarSettings({ settings }: { readonly settings: Signal<Settings> }) {
  const { address, listening } = settings.value;
  const [words, setWords] = useState(address);
  return (
    <>
      <Choice
        name="When to listen"
        options={ways}
        value={listening}
        onChoose={(way) => {
          settings.value = { ...settings.value, listening: way };
        }}
      />
      <form
        class="field field-row"
        onSubmit={(event) => {
          event.preventDefault();
          settings.value = { ...settings.value, address: words.trim().toLowerCase() };
        }}
      >
        <label>
          <span>Its name: two words, four syllables or more</span>
          <input
            type="text"
            required
            minLength={3}
            maxLength={40}
            pattern="[A-Za-z' ]+"
            title="Letters and spaces only"
            value={words}
            autocomplete="off"
            onInput={(event) => setWords(event.currentTarget.value)}
          />
        </label>
        <button type="submit" class="key" disabled={words.trim().toLowerCase() === address}>
          Use it
        </button>
      </form>
    </>
  );
}
