import type { House } from "../../core/house/house.ts";
import { fridgeUnknown, fromFridge, type FromFridge, type ListFor } from "../../core/shop/from-fridge.ts";
import { calendarNow } from "../kitchen/wall.ts";
import { printMessage } from "./print.ts";
import { houseIn } from "./with-house.ts";

/** The house of a folder; null where there is no log that can be read, and then that is told and the work goes on. */
export function houseIfKnown(folder: string): House | null {
  const house = houseIn(folder);
  if (house.ok) return house.value;
  printMessage(`${house.error} So nothing is known of the house.`);
  return null;
}

/** What a house has to say to a list of what to buy. */
export const fridgeFor = (house: House | null, wanted: ListFor): FromFridge =>
  house === null ? fridgeUnknown : fromFridge(house, wanted, calendarNow());
