import { useId, useState } from "preact/hooks";
import type { Nutrient } from "../../../core/food/nutrients.ts";
import { valueParts } from "../../../core/food/value-parts.ts";
import { LimitLine, limitMark } from "./limit-line.tsx";
import type { ValueRow, ValueTableView } from "./meal-view.ts";
import { PartsList } from "./parts-list.tsx";

interface TableProps {
  readonly table: ValueTableView;
  /** Whether it stands unfolded at first. */
  readonly isOpen: boolean;
}

/** Limits that are not kept show before the table is unfolded. */
function worstOf({ rows }: ValueTableView): string | null {
  const limits = rows.flatMap((row) => row.limits);
  const broken = limits.filter(({ state }) => state === "broken").length;
  const unsure = limits.filter(({ state }) => state === "cannot tell").length;
  const many = (count: number): string => (count === 1 ? "one limit" : `${count} limits`);
  if (broken > 0) return `${limitMark.broken} over ${many(broken)}`;
  if (unsure > 0) return `${limitMark["cannot tell"]} cannot tell of ${many(unsure)}`;
  return limits.length === 0 ? null : `${limitMark.kept} within its limits`;
}

/** All values of a dish, of the meal or of the day; a touch on one of a dish tells where it comes from. */
export function ValueTable({ table, isOpen }: TableProps) {
  const { name, heads, rows, glance } = table;
  const [shown, setShown] = useState<Nutrient | null>(null);
  const worst = worstOf(table);
  const energy = rows.find(({ nutrient }) => nutrient === "energy")?.cells[glance] ?? "unknown";
  return (
    <details class="value-dish" open={isOpen}>
      <summary>
        <span class="value-name">{name}</span>
        <span class="value-glance">
          {heads[glance]}: {energy}
          {worst !== null && `, ${worst}`}
        </span>
      </summary>
      <table class="value-table">
        <caption>{name}</caption>
        <thead>
          <tr>
            <th scope="col">Value</th>
            {heads.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        {rows.map((row) => (
          <Row
            key={row.nutrient}
            row={row}
            table={table}
            isShown={shown === row.nutrient}
            onTouch={() => setShown(shown === row.nutrient ? null : row.nutrient)}
          />
        ))}
      </table>
    </details>
  );
}

interface RowProps {
  readonly row: ValueRow;
  readonly table: ValueTableView;
  readonly isShown: boolean;
  readonly onTouch: () => void;
}

function Row({ row, table, isShown, onTouch }: RowProps) {
  const { name, cells, missing, limits, nutrient } = row;
  const { dish } = table;
  const parts = useId();
  const figures = cells.map((cell, index) => <td key={table.heads[index]}>{cell}</td>);
  return (
    <tbody>
      {dish === null ? (
        <tr>
          <th scope="row">{name}</th>
          {figures}
        </tr>
      ) : (
        // The key inside is for keyboards and screen readers; its click comes up here as well.
        <tr class="value-touch" onClick={onTouch}>
          <th scope="row">
            <button
              type="button"
              class="value-key"
              aria-expanded={isShown}
              aria-controls={isShown ? parts : undefined}
              aria-label={`${name}, where it comes from`}
            >
              {name}
            </button>
          </th>
          {figures}
        </tr>
      )}
      {(missing !== null || limits.length > 0) && (
        <tr class="value-more">
          <td colSpan={3}>
            {missing !== null && <span class="value-missing">{missing}</span>}
            {limits.map((limit) => (
              <LimitLine key={limit.limit} limit={limit} />
            ))}
          </td>
        </tr>
      )}
      {dish !== null && isShown && (
        <tr class="value-parts" id={parts}>
          <td colSpan={3}>
            <PartsList parts={valueParts(nutrient, dish)} />
          </td>
        </tr>
      )}
    </tbody>
  );
}
