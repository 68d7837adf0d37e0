import { useEffect, useRef } from "preact/hooks";
import type { ComponentChildren } from "preact";

interface SheetProps {
  readonly title: string;
  readonly kind: "panel" | "card" | "wide";
  readonly onClose: () => void;
  /** What the round button in its corner is called. */
  readonly closing?: string;
  /** More keys in its head, before that button. */
  readonly keys?: ComponentChildren;
  readonly children: ComponentChildren;
}

/** Something laid over the page until it is put away: by its button, the Escape key, or a touch beside it. */
export function Sheet({ title, kind, onClose, closing = "Put away", keys, children }: SheetProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const shown = dialog.current;
    shown?.showModal();
    return () => shown?.close();
  }, []);
  return (
    <dialog
      ref={dialog}
      class={`sheet sheet-${kind}`}
      aria-label={title}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
      onClick={(event) => {
        if (event.target === dialog.current) onClose();
      }}
    >
      <div class="sheet-inside">
        <header class="sheet-head">
          <h2>{title}</h2>
          <div class="deed-keys">
            {keys}
            <button type="button" class="key key-quiet" onClick={onClose}>
              {closing}
            </button>
          </div>
        </header>
        {children}
      </div>
    </dialog>
  );
}
