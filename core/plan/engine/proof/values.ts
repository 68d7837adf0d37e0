import type { Timetable } from "../network.ts";
import type { Model } from "./model.ts";

/** The timetable that the values of all variables say. */
export function timetableOf(model: Model, values: ArrayLike<number>): Timetable {
  return {
    starts: model.choices.map((_, act) => values[act] ?? 0),
    bakings: model.choices.map((choices) =>
      Math.max(
        0,
        choices.findIndex((choice) => values[choice] === 1),
      ),
    ),
    tended: model.tended.map((times) => times.map((time) => values[time] ?? 0)),
  };
}

/** The values that a timetable gives all variables; switches that nothing decides are 1. */
export function valuesOf(model: Model, timetable: Timetable): Int32Array {
  const values = new Int32Array(model.variables).fill(1);
  values[model.origin] = 0;
  model.choices.forEach((choices, act) => {
    values[act] = timetable.starts[act] ?? 0;
    choices.forEach((choice, index) => (values[choice] = timetable.bakings[act] === index ? 1 : 0));
  });
  model.tended.forEach((times, act) =>
    times.forEach((time, index) => (values[time] = timetable.tended[act]?.[index] ?? 0)),
  );
  for (const { from, to, least, conditions } of model.edges) {
    const order = conditions.at(-1) ?? 1;
    // The last condition of an edge between two spans says their order; an even node is the one for "first".
    const isOrder = (order & 1) === 0 && from !== model.origin;
    if (!isOrder || conditions.slice(0, -1).some((node) => values[node >> 1] !== 1)) continue;
    values[order >> 1] = (values[to] ?? 0) >= (values[from] ?? 0) + least ? 1 : 0;
  }
  return values;
}
