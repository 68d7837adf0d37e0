import { fahrenheit, hours, minutes, seconds } from "../units/quantity.ts";
import type { Fahrenheit, Seconds } from "../units/quantity.ts";
import type { SourceId } from "./sources-table.ts";

/** One figure of published guidance. */
export interface Figure<V> {
  readonly value: V;
  readonly source: SourceId;
  /** What another source says, less strictly; the stricter one counts. null: nothing else is known. */
  readonly lessStrict: { readonly value: V; readonly source: SourceId } | null;
}

const figure = <V>(
  value: V,
  source: SourceId,
  lessStrict: readonly [V, SourceId] | null = null,
): Figure<V> => ({
  value,
  source,
  lessStrict: lessStrict === null ? null : { value: lessStrict[0], source: lessStrict[1] },
});

/** What is cooled has to come down to `heat` within so long after it left the heat. */
export interface CoolingMark {
  readonly heat: Fahrenheit;
  readonly within: Seconds;
}

const mark = (degrees: number, within: Seconds): CoolingMark => ({ heat: fahrenheit(degrees), within });

/**
 * What published guidance says of food that was cooked: degrees Fahrenheit, lengths of time, days. Where sources
 * differ, the stricter figure stands and the other is told beside it. Local rules go before all of them.
 */
export const guidance = {
  /** Cooling counts from here. */
  hotFrom: figure(fahrenheit(135), "cooling"),
  coolFirst: figure(mark(70, hours(2)), "cooling"),
  /** In all, not on top of the first. */
  coolInAll: figure(mark(41, hours(6)), "cooling"),
  /** What was made of things at room temperature: a salad of canned beans. */
  coolFromAmbient: figure(mark(41, hours(4)), "cooling"),
  outAtMost: figure(hours(2), "leftovers"),
  /** Where the kitchen is above `hotKitchen`. */
  outWhenHot: figure(hours(1), "leftovers"),
  hotKitchen: figure(fahrenheit(90), "leftovers"),
  fridgeDays: figure(3, "leftovers", [4, "leftovers"]),
  riceFridgeDays: figure(1, "rice", [3, "leftovers"]),
  garlicOilFridgeDays: figure(7, "garlicOil"),
  /** For its taste: frozen at 0 F it stays safe. Three months, the shorter of "3 to 4". */
  freezerDays: figure(90, "leftovers", [120, "leftovers"]),
  reheatTo: figure(fahrenheit(165), "reheating"),
  reheatWithin: figure(hours(2), "reheating"),
  reheatHeldFor: figure(seconds(15), "reheating"),
  holdHot: figure(fahrenheit(140), "dangerZone", [fahrenheit(135), "holding"]),
  holdCold: figure(fahrenheit(40), "dangerZone", [fahrenheit(41), "holding"]),
  soakBeans: figure(hours(5), "beans"),
  /** Ten minutes at a full boil are named too; thirty make sure that it gets there. */
  boilBeans: figure(minutes(30), "beans", [minutes(10), "beans"]),
} as const;
