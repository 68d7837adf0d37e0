import { useRef, useState } from "preact/hooks";
import type { Session } from "../../../core/cook/session.ts";
import type { Pace, WorkKind } from "../../../core/pace/pace.ts";
import type { MealStore } from "../../kitchen/meal-store.ts";
import { PaceRow } from "./pace-row.tsx";

interface PaceKeysProps {
  readonly session: Session;
  readonly store: Pick<MealStore, "give">;
}

const isOfUse = ({ steps, wish, of }: Pace): boolean => steps > 0 || wish !== null || of.length > 0;
const isKnown = ({ steps, wish }: Pace): boolean => steps > 0 || wish !== null;

/** How long this cook takes for each kind of work, to see, to set and to have forgotten. */
export function PaceKeys({ session, store }: PaceKeysProps) {
  const list = useRef<HTMLUListElement>(null);
  const [open, setOpen] = useState<WorkKind | null>(null);
  const { paces } = session;
  const forget = (): void => {
    store.give([{ type: "ForgetPace" }]);
    setOpen(null);
    // The key that had the focus is gone: it stays with what the key has changed.
    list.current?.focus();
  };
  return (
    <>
      <p class="hint">
        Learnt from the evenings before this one, from the second on, and kept on this machine. The plan goes
        by it; what is on the heat, what rests or chills, and every timer keep the recipe's time.
      </p>
      {paces.length === 0 && <p>The next meal that you begin will know.</p>}
      <ul class="paces" ref={list} tabIndex={-1} aria-label="How long you take">
        {paces.filter(isOfUse).map((pace) => (
          <PaceRow
            key={pace.kind}
            pace={pace}
            isOpen={open === pace.kind}
            onOpen={() => setOpen(open === pace.kind ? null : pace.kind)}
            onWish={(wish) => store.give([{ type: "SetPace", kind: pace.kind, wish }])}
          />
        ))}
      </ul>
      {paces.some(isKnown) && <Forget onForget={forget} />}
    </>
  );
}

/** Asked back, since it is the work of weeks. */
function Forget({ onForget }: { readonly onForget: () => void }) {
  const [isAsking, setAsking] = useState(false);
  if (!isAsking) {
    return (
      <button type="button" class="key key-small" onClick={() => setAsking(true)}>
        Forget how long I take
      </button>
    );
  }
  return (
    <div class="misheard-ask" role="group" aria-label="All that was learnt and set">
      <p role="status">Forget all of it, and plan as the recipes say?</p>
      <div class="choice">
        <button type="button" class="key key-small key-danger" onClick={onForget}>
          Yes, forget it
        </button>
        <button type="button" class="key key-small" onClick={() => setAsking(false)}>
          No, keep it
        </button>
      </div>
    </div>
  );
}
