import { useCallback, useEffect, useState } from "preact/hooks";
import { buyingCaution } from "../../../core/shop/written-list.ts";
import type { BuyingRequest } from "../../../core/sync/buying-request.ts";
import { EarLine } from "../ear/ear-line.tsx";
import { atHand, turn } from "./at-hand.ts";
import { BuyingChoices } from "./buying-choices.tsx";
import type { BuyingProps } from "./buying-props.ts";
import { BuyingSections } from "./buying-sections.tsx";
import { ListHead } from "./list-head.tsx";
import { ListKeys } from "./list-keys.tsx";
import { OwnLine } from "./own-line.tsx";
import { useListPaper } from "./use-list-paper.tsx";

type Making =
  | { readonly state: "idle" }
  | { readonly state: "making" }
  | { readonly state: "failed"; readonly sentence: string };

/** The list by place, to be ticked off by touch or voice; for which meals, and less what is in the house. */
export function BuyingListPage({ galley, desk, meals, shopping, onClose }: BuyingProps) {
  const keeper = galley.house.value;
  const [kept, hand] = [desk.kept.value, atHand(desk, keeper)];
  const [making, setMaking] = useState<Making>({ state: "idle" });
  useListPaper(hand);
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
  useEffect(() => {
    desk.look(true);
    return () => desk.look(false);
  }, [desk]);
  const write = (name: string): void => {
    if (keeper === null) desk.write(name);
    else
      galley.caller.touch(
        { type: "PutOnList", what: { by: "words", words: name } },
        `add ${name} to the list`,
      );
  };
  const clear = (): void => {
    keeper?.give([{ type: "ClearBought" }]);
    if (kept !== null && kept.ticked.length > 0) make("begin", kept.wanted);
  };
  return (
    <div class="buying">
      {making.state === "failed" && (
        <p class="refused" role="alert">
          {making.sentence}
        </p>
      )}
      {hand === null && making.state !== "failed" && (
        <p role="status">{making.state === "making" ? "Making the list." : "Nothing is on the list yet."}</p>
      )}
      {hand !== null && (
        <>
          <ListHead hand={hand} id={kept?.id ?? "house"} />
          <BuyingSections hand={hand} onTurn={(line) => turn(line, desk, keeper)} />
        </>
      )}
      {(hand !== null || keeper !== null) && <OwnLine onWrite={write} />}
      {kept !== null && (
        <BuyingChoices
          kept={kept}
          meals={meals}
          isBusy={making.state === "making"}
          onChange={(wanted) => make("change", wanted)}
        />
      )}
      {hand !== null && (
        <ListKeys
          hand={hand}
          isMade={kept !== null}
          onClear={clear}
          onThrowAway={() => {
            desk.throwAway();
            onClose();
          }}
        />
      )}
      <p class="hint">{buyingCaution}</p>
      <EarLine galley={galley} onCheck={null} />
    </div>
  );
}
