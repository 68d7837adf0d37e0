import type { WrittenLine, WrittenSection } from "../../../core/shop/written-list.ts";
import type { HandLine, ListAtHand } from "../../../core/shop/at-hand.ts";

interface SectionsProps {
  readonly hand: ListAtHand;
  /** Ticks a line, or has it back. */
  readonly onTurn: (line: HandLine) => void;
}

/** The places of the shop one after another. What is ticked sinks in its place, and a place that is done below the others. */
export function BuyingSections({ hand, onTurn }: SectionsProps) {
  const { list } = hand;
  const lineOf = new Map(hand.lines.map((line) => [line.id, line]));
  const isTicked = ({ id }: WrittenLine): boolean => lineOf.get(id)?.isTicked === true;
  const isDone = ({ kind, lines }: WrittenSection): boolean => kind === "buy" && lines.every(isTicked);
  return (
    <div class="buying-places">
      {sunk(list.sections, isDone).map((section) => (
        <section key={`${section.kind} ${section.name}`} class={isDone(section) ? "is-done" : ""}>
          <h3>{section.name}</h3>
          <ul>
            {sunk(section.lines, isTicked).map((line) => {
              const known = lineOf.get(line.id);
              return (
                <Row
                  key={line.id}
                  line={line}
                  isTicked={isTicked(line)}
                  onTick={known === undefined ? null : () => onTurn(known)}
                />
              );
            })}
          </ul>
        </section>
      ))}
      {list.notNeeded.length > 0 && (
        <p class="hint">In the house, and in none of these dishes: {list.notNeeded.join("; ")}.</p>
      )}
    </div>
  );
}

function sunk<T>(all: readonly T[], isLow: (one: T) => boolean): readonly T[] {
  return [...all.filter((one) => !isLow(one)), ...all.filter(isLow)];
}

interface RowProps {
  readonly line: WrittenLine;
  readonly isTicked: boolean;
  /** null: there is nothing to buy of it. */
  readonly onTick: (() => void) | null;
}

function Row({ line, isTicked, onTick }: RowProps) {
  const { name, buy, note, shares } = line;
  const words = (
    <span class="buying-words">
      <span class="buying-what">
        <b>{name}</b>
        {buy === "" ? "" : ` ${buy}`}
      </span>
      {note !== "" && <span class="buying-note">{note}</span>}
      {shares !== "" && <span class="buying-shares">{shares}</span>}
    </span>
  );
  return (
    <li class={isTicked ? "is-ticked" : ""}>
      {onTick === null ? (
        <div class="buying-line">{words}</div>
      ) : (
        <label class="buying-line">
          <input type="checkbox" name={line.id} checked={isTicked} onChange={onTick} />
          {words}
        </label>
      )}
    </li>
  );
}
