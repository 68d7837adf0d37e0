import { useState } from "preact/hooks";
import { firstToUse } from "../../../core/house/standing.ts";
import { minus, minutes } from "../../../core/units/quantity.ts";
import type { Line } from "../../kitchen/caller.ts";
import type { Galley } from "../galley.ts";
import type { OnDeed } from "../parts/deed.ts";
import { FridgeRow } from "./fridge-row.tsx";

/** So long an answer stands to be read. */
const justNow = minutes(2);

const lastAnswer = (lines: readonly Line[]): Line | undefined =>
  lines.findLast(({ how }) => how === "answer");

/** What is left in the fridge and the freezer, what to use first at the top; nothing where nothing is. */
export function Fridge({ galley }: { readonly galley: Galley }) {
  // What is answered to others than these keys has another place.
  const [answer, setAnswer] = useState<string | null>(null);
  const keeper = galley.house.value;
  if (keeper === null) return null;
  const { leftovers } = keeper.house.value;
  const there = firstToUse(leftovers);
  const onDeed: OnDeed = ({ intent, words }) => {
    galley.caller.touch(intent, words);
    setAnswer(lastAnswer(galley.caller.lines.peek())?.id ?? null);
  };
  // The answer is said aloud; where the page may not sound yet it is at least to be read.
  const now = galley.clock.now.value;
  const last = lastAnswer(galley.caller.lines.value);
  const said = last !== undefined && last.id === answer && last.at > minus(now, justNow) ? last : undefined;
  const undo = (): void => onDeed({ label: "undo", intent: { type: "UndoThat" }, words: "undo that" });
  if (there.length === 0 && said === undefined) return null;
  return (
    <section class="fridge" aria-labelledby="fridge-title">
      <h2 id="fridge-title">{there.length === 0 ? "Nothing is left" : "Left to eat, soonest first"}</h2>
      <ul class="fridge-rows">
        {there.map((leftover) => (
          <FridgeRow key={leftover.id} leftover={leftover} clock={galley.clock} onDeed={onDeed} />
        ))}
      </ul>
      {said !== undefined && (
        <p class="fridge-said">
          <span role="status">{said.text}</span>
          <button type="button" class="key key-small key-quiet" onClick={undo}>
            Undo
          </button>
        </p>
      )}
      {there.length > 0 && (
        <p class="left-hint">
          Heat it to 165 °F all through, once, and only what you eat now. What smells or looks wrong goes,
          whatever its day.
        </p>
      )}
    </section>
  );
}
