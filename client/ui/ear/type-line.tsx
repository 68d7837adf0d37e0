import { useEffect, useRef, useState } from "preact/hooks";

interface TypeLineProps {
  readonly onSay: (text: string) => void;
  readonly onClose: () => void;
}

/** Typing in place of speaking: the same sentences, without the address. */
export function TypeLine({ onSay, onClose }: TypeLineProps) {
  const [text, setText] = useState("");
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => field.current?.focus(), []);
  return (
    <form
      class="type-line"
      onSubmit={(event) => {
        event.preventDefault();
        if (text.trim() === "") return;
        onSay(text.trim());
        setText("");
      }}
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        // It closes this line, and not what the line is laid over.
        event.preventDefault();
        onClose();
      }}
    >
      <input
        ref={field}
        type="text"
        aria-label="Type what you would say"
        placeholder="what next"
        maxLength={200}
        value={text}
        autocomplete="off"
        enterkeyhint="send"
        onInput={(event) => setText(event.currentTarget.value)}
      />
      <button type="submit" class="key key-small">
        Say it
      </button>
      <button type="button" class="key key-small key-quiet" onClick={onClose}>
        Close
      </button>
    </form>
  );
}
