import type { Session } from "../../../../core/cook/session.ts";
import type { Instant } from "../../../../core/units/quantity.ts";
import { shortName } from "../../../../core/cook/say-call.ts";
import { dishMarks } from "../../parts/dish-marks.ts";
import type { Evening } from "../evening-layout.ts";
import type { HeatCurve } from "../heat-curve.ts";
import { LanePicture } from "../lane-picture.tsx";
import type { PictureSize } from "../picture-size.ts";
import { PictureKey } from "../picture-key.tsx";
import { cautionsOf } from "./paper-cautions.ts";
import type { PaperRow } from "./paper-rows.ts";

/** How the list is set, so that it fits: the larger the better. */
export interface PaperSetting {
  /** Of the list's letters, in points; `leastPoints` at least. */
  readonly points: number;
  readonly columns: number;
  /** Whether the moments that want the cook are told below their step; the picture has them as well. */
  readonly hasMoments: boolean;
}

export interface RunSheetPaperProps {
  readonly session: Session;
  readonly evening: Evening;
  readonly heats: ReadonlyMap<string, HeatCurve>;
  readonly rows: readonly PaperRow[];
  readonly setting: PaperSetting;
  readonly picture: PictureSize;
  readonly clockOf: (at: Instant) => string;
  readonly utcOffsetMinutes: number;
}

/** Smaller letters are not set on paper. */
export const leastPoints = 7;

/** The evening on one page, black on white: picture, list, what to take care of. */
export function RunSheetPaper(props: RunSheetPaperProps) {
  const { session, evening, heats, rows, setting, picture, clockOf, utcOffsetMinutes } = props;
  const clock = (at: Instant): string => clockOf(at).replace(/ [ap]m$/, "");
  const marks = dishMarks(session.meal);
  const asked = evening.serveAt === null ? "" : ` · asked for ${clockOf(evening.serveAt)}`;
  return (
    <>
      <header class="paper-head">
        <h1>{session.meal.name}</h1>
        <p>
          <b>On the table {clockOf(evening.readyAt)}</b>
          {asked} · printed {clockOf(evening.now)}
        </p>
      </header>
      <ul class="paper-dishes">
        {session.meal.dishes.map((dish) => (
          <li key={dish.id}>
            <b>{marks.get(dish.id)?.letter}</b> {shortName(dish)}, {dish.yield.servings} {dish.yield.of}
          </li>
        ))}
      </ul>
      <LanePicture
        evening={evening}
        heats={heats}
        size={picture}
        clockOf={clockOf}
        utcOffsetMinutes={utcOffsetMinutes}
        nowWord="printed"
      />
      <PictureKey />
      <ol class="paper-list" style={{ fontSize: `${setting.points}pt`, columnCount: setting.columns }}>
        {rows.map((row) => (
          <Row key={row.key} row={row} clock={clock} hasMoments={setting.hasMoments} />
        ))}
        <li class="paper-table">
          <i class="paper-tick" />
          <b>{clock(evening.readyAt)}</b>
          <span class="paper-what">
            <b>On the table</b>
          </span>
        </li>
      </ol>
      <footer class="paper-care" style={{ fontSize: `${Math.max(leastPoints, setting.points - 2)}pt` }}>
        {cautionsOf(session.meal).join(" ")}
      </footer>
    </>
  );
}

interface RowProps {
  readonly row: PaperRow;
  readonly clock: (at: Instant) => string;
  readonly hasMoments: boolean;
}

function Row({ row, clock, hasMoments }: RowProps) {
  const { at, letter, dish, title, length, place, moments, isAwaited, isDone } = row;
  return (
    <li class={isAwaited ? "is-awaited" : ""}>
      <i class={`paper-tick ${isDone ? "is-done" : ""}`} />
      <b>{clock(at)}</b>
      <span class="paper-what">
        {dish !== "" && (
          <>
            <b>{letter}</b> {dish}:{" "}
          </>
        )}
        {title}
        {hasMoments &&
          moments.map((moment) => (
            <em key={moment.what}>
              {" "}
              {moment.what} {moment.at.map(clock).join(", ")}.
            </em>
          ))}
      </span>
      <span class="paper-length">{[length, place].filter((part) => part !== "").join(" · ")}</span>
    </li>
  );
}
