import { buyingCaution } from "../../../core/shop/written-list.ts";
import type { WrittenLine } from "../../../core/shop/written-list.ts";
import type { ListAtHand } from "../../../core/shop/at-hand.ts";

/** How the list is set, so that it fits: the larger the better. */
export interface ListSetting {
  /** Of the list's letters, in points. */
  readonly points: number;
  readonly columns: number;
}

interface ListPaperProps {
  readonly hand: ListAtHand;
  readonly setting: ListSetting;
}

/** The list on one page, black on white, with boxes to tick. */
export function ListPaper({ hand, setting }: ListPaperProps) {
  const { list } = hand;
  const ticked = new Set(hand.lines.flatMap(({ id, isTicked }) => (isTicked ? [id] : [])));
  const size = { fontSize: `${setting.points}pt` };
  return (
    <>
      <header class="paper-head">
        <h1>What to buy for {list.title}</h1>
      </header>
      <p class="list-dishes">
        {list.dishes.length > 0 && `${list.dishes.join("; ")}.`}
        {list.fridge.length > 0 && ` Left from before: ${list.fridge.join(" ")}`}
        {list.useFirst.length > 0 && ` Use up first: ${list.useFirst.join("; ")}.`}
      </p>
      <div class="list-places" style={{ ...size, columnCount: setting.columns }}>
        {list.sections.map(({ kind, name, lines }) => (
          <section key={`${kind} ${name}`}>
            <h2>{name}</h2>
            <ul>
              {lines.map((line) => (
                <Row
                  key={line.id}
                  line={line}
                  mark={kind === "enough" ? "none" : ticked.has(line.id) ? "done" : "open"}
                />
              ))}
            </ul>
          </section>
        ))}
      </div>
      <footer class="paper-care">{buyingCaution}</footer>
    </>
  );
}

interface RowProps {
  readonly line: WrittenLine;
  readonly mark: "open" | "done" | "none";
}

function Row({ line, mark }: RowProps) {
  const { name, buy, note, shares } = line;
  return (
    <li>
      {mark === "none" ? <span /> : <i class={`paper-tick ${mark === "done" ? "is-done" : ""}`} />}
      <span>
        <b>{name}</b>
        {buy === "" ? "" : ` ${buy}`}
        {note === "" ? "" : ` (${note})`}
        <small>{shares}</small>
      </span>
    </li>
  );
}
