import type { ListAtHand } from "../../../core/shop/at-hand.ts";
import { savedPage } from "../../../core/shop/saved-page.ts";
import { saveFile } from "../../kitchen/save-file.ts";
import { leftWords } from "./at-hand.ts";
import { capital } from "../../../core/units/capital.ts";

interface HeadProps {
  readonly hand: ListAtHand;
  /** Tells this list's ticks from another's on a saved page. */
  readonly id: string;
}

/** For which meals the list is, how much of it is left, and its ways out of here. */
export function ListHead({ hand, id }: HeadProps) {
  const { list } = hand;
  const save = (): void => {
    const bytes = new TextEncoder().encode(savedPage(list, id));
    saveFile(bytes, "what-to-buy.html", "text/html");
  };
  return (
    <div class="buying-head">
      <div>
        <p class="buying-for">
          <b>{capital(list.title)}</b>: <output>{leftWords(hand)}</output>
        </p>
        {list.dishes.length > 0 && <p class="hint">{list.dishes.join("; ")}</p>}
        {list.fridge.length > 0 && (
          <p>
            <b>Left from before:</b> {list.fridge.join(" ")}
          </p>
        )}
        {list.useFirst.length > 0 && (
          <p>
            <b>Use up first:</b> {list.useFirst.join("; ")}
          </p>
        )}
      </div>
      <div class="deed-keys">
        <button type="button" class="key key-small" onClick={() => window.print()}>
          Print
        </button>
        <button type="button" class="key key-small" onClick={save}>
          Save it for the phone
        </button>
      </div>
    </div>
  );
}
