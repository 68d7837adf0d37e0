import { useCallback, useEffect, useState } from "preact/hooks";
import { savedPage } from "../../../core/shop/saved-page.ts";
import { buyingCaution } from "../../../core/shop/written-list.ts";
import type { BuyingRequest } from "../../../core/sync/buying-request.ts";
import type { KeptList } from "../../kitchen/buying-model.ts";
import { saveFile } from "../../kitchen/save-file.ts";
import { BuyingChoices } from "./buying-choices.tsx";
import { BuyingSections } from "./buying-sections.tsx";
import { OwnLine } from "./own-line.tsx";
import type { BuyingProps } from "./buying-props.ts";
import { leftToBuy } from "./left-to-buy.ts";
import { shownList } from "./shown-list.ts";
import { useListPaper } from "./use-list-paper.tsx";

type Making =
  | { readonly state: "idle" }
  | { readonly state: "making" }
  | { readonly state: "failed"; readonly sentence: string };

/** The list by place, to be ticked off; for which meals, and less what is in the house. */
export function BuyingListPage({ desk, meals, shopping, onClose }: BuyingProps) {
  const kept = desk.kept.value;
  const [making, setMaking] = useState<Making>({ state: "idle" });
  useListPaper(kept);
  const make = useCallback(
    (how: "begin" | "change", wanted: BuyingRequest): void => {
      setMaking({ state: "making" });
      void desk[how](wanted).then((sentence) => {
        setMaking(sentence === null ? { state: "idle" } : { state: "failed", sentence });
      });
    },
    [desk],
  );
  useEffect(() => {
    if (shopping.for === "kept") return;
    const before = desk.kept.peek()?.wanted;
    const isSame = JSON.stringify(before?.meals) === JSON.stringify([shopping.meal]);
    if (!isSame) make("begin", { meals: [shopping.meal], house: before?.house ?? "" });
  }, [desk, shopping, make]);
  return (
    <div class="buying">
      {making.state === "failed" && (
        <p class="refused" role="alert">
          {making.sentence}
        </p>
      )}
      {kept === null && making.state !== "failed" && <p role="status">Making the list.</p>}
      {kept !== null && (
        <>
          <Head kept={kept} />
          <BuyingSections kept={kept} onTick={desk.tick} />
          <OwnLine onWrite={desk.write} />
          <BuyingChoices
            kept={kept}
            meals={meals}
            isBusy={making.state === "making"}
            onChange={(wanted) => make("change", wanted)}
          />
          <div class="deed-keys">
            <button
              type="button"
              class="key key-small key-quiet"
              disabled={kept.ticked.length === 0}
              onClick={() => make("begin", kept.wanted)}
            >
              Clear the ticks
            </button>
            <button
              type="button"
              class="key key-small key-quiet"
              onClick={() => {
                desk.throwAway();
                onClose();
              }}
            >
              Throw the list away
            </button>
          </div>
          <p class="hint">{buyingCaution}</p>
        </>
      )}
    </div>
  );
}

function Head({ kept }: { readonly kept: KeptList }) {
  const { list, id } = kept;
  const save = (): void => {
    const bytes = new TextEncoder().encode(savedPage(shownList(kept), id));
    saveFile(bytes, "what-to-buy.html", "text/html");
  };
  return (
    <div class="buying-head">
      <div>
        <p class="buying-for">
          <b>{list.title}</b>: <output>{leftToBuy(kept)}</output>
        </p>
        <p class="hint">{list.dishes.join("; ")}</p>
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
