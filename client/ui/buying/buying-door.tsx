import type { FunctionComponent } from "preact";
import type { MealCard } from "../../../core/sync/protocol.ts";
import type { Galley } from "../galley.ts";
import { Sheet } from "../parts/sheet.tsx";
import { useLazy } from "../parts/use-lazy.ts";
import type { BuyingProps, Shopping } from "./buying-props.ts";
import { atHand, leftWords } from "./at-hand.ts";
import { useDesk } from "./use-desk.ts";

interface DoorProps {
  readonly galley: Galley;
  readonly meals: readonly MealCard[];
  /** null: nobody looks at the list. */
  readonly shopping: Shopping | null;
  readonly onShopping: (shopping: Shopping | null) => void;
}

const load = async (): Promise<FunctionComponent<BuyingProps>> =>
  (await import("./buying-list.tsx")).BuyingListPage;

/** The way back to the list that this device keeps, and the list laid over the page. Its code comes with the start page. */
export function BuyingDoor({ galley, meals, shopping, onShopping }: DoorProps) {
  const link = galley.store.link.value;
  const desk = useDesk(galley.buying, link);
  // Fetched before it is wanted: in the shop there is no server to fetch it from.
  const page = useLazy(load, link);
  const keeper = galley.house.value;
  const hand = atHand(desk, keeper);
  return (
    <>
      {(hand !== null || keeper !== null) && (
        <aside aria-label="What to buy">
          <button type="button" class="key key-small" onClick={() => onShopping({ for: "kept" })}>
            {hand === null
              ? "Write a list of what to buy"
              : `Your list for ${hand.list.title}: ${leftWords(hand)}`}
          </button>
        </aside>
      )}
      {shopping !== null && (
        <Sheet title="What to buy" kind="wide" onClose={() => onShopping(null)}>
          {desk !== null && page.state === "here" ? (
            <page.Inside
              galley={galley}
              desk={desk}
              meals={meals}
              shopping={shopping}
              onClose={() => onShopping(null)}
            />
          ) : (
            <p role="status">
              {page.state === "failed" ? "The list cannot be opened while the server is away." : "Opening."}
            </p>
          )}
        </Sheet>
      )}
    </>
  );
}
