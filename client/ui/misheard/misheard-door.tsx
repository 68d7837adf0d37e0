import { useState } from "preact/hooks";
import type { Galley } from "../galley.ts";
import { LazyMisheardList } from "./lazy-misheard-list.tsx";
import { useRecord } from "./use-record.ts";

/** The way to the record where nothing is being cooked, with dry hands: only for who keeps one. */
export function MisheardDoor({ galley }: { readonly galley: Galley }) {
  const [isOpen, setOpen] = useState(false);
  if (!galley.settings.value.keepMisheard) return null;
  return (
    <aside aria-label="Misheard sentences">
      <button type="button" class="key key-small key-quiet" onClick={() => setOpen(true)}>
        Listen to what was misheard
      </button>
      {isOpen && <Behind galley={galley} onClose={() => setOpen(false)} />}
    </aside>
  );
}

interface BehindProps {
  readonly galley: Galley;
  readonly onClose: () => void;
}

function Behind({ galley, onClose }: BehindProps) {
  const record = useRecord(galley.misheard);
  if (record === "opening") return <p role="status">Opening.</p>;
  if (record === "failed")
    return <p role="alert">The misheard sentences cannot be read while the server is away.</p>;
  return <LazyMisheardList record={record} clock={galley.clock} onClose={onClose} />;
}
