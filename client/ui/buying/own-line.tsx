import { useState } from "preact/hooks";

/** Something more to buy, in the cook's own words. */
export function OwnLine({ onWrite }: { readonly onWrite: (thing: string) => void }) {
  const [text, setText] = useState("");
  return (
    <form
      class="buying-own"
      onSubmit={(event) => {
        event.preventDefault();
        onWrite(text);
        setText("");
      }}
    >
      <label for="buying-own">Something else to buy</label>
      <input
        id="buying-own"
        class="buying-field"
        type="text"
        maxLength={80}
        value={text}
        onInput={(event) => setText(event.currentTarget.value)}
      />
      <button type="submit" class="key key-small" disabled={text.trim() === ""}>
        Write it down
      </button>
    </form>
  );
}
