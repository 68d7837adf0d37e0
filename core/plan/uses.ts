import type { Heat } from "../units/temperature.ts";
import type { Entry, OvenMove, RunSheet } from "./model.ts";

/** The turn of the oven that a step bakes by. */
function turnFor(entry: Entry, oven: string, moves: readonly OvenMove[]): OvenMove | undefined {
  const turns = moves.filter((move) => move.oven === oven);
  return (
    turns.find((move) => move.for.includes(entry.task)) ??
    turns.findLast((move) => move.readyAt <= entry.start)
  );
}

/**
 * What a step takes up from its start to its end: "cook", "burner 1", "oven 400 F". A place at the counter is no more
 * than where a bowl stands, so it is not among them.
 * @param setTo what each oven is set to before the sheet turns it
 */
export function usesOf(
  entry: Entry,
  { ovenMoves }: RunSheet,
  setTo: ReadonlyMap<string, Heat | null>,
  heatWords: (heat: Heat) => string,
): readonly string[] {
  return entry.lanes
    .filter((lane) => lane !== "counter")
    .map((lane) => {
      const before = setTo.get(lane);
      const heat = before === undefined ? null : (turnFor(entry, lane, ovenMoves)?.heat ?? before);
      return heat === null ? lane : `${lane} ${heatWords(heat)}`;
    });
}
