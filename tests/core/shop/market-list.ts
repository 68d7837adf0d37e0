import { writtenList } from "../../../core/shop/written-list.ts";
import type { DeviceList } from "../../../core/shop/at-hand.ts";
import { noDeviceList } from "../../../core/shop/at-hand.ts";
import { dish, listFor, meal } from "./market.ts";

const supper = [
  meal("Market supper", [
    dish("soup", ["2 lemons", "3 red onions", "7 garlic cloves", "1 cup red lentils", "salt, to taste"]),
    dish("salad", ["4 green onions", "1 cabbage", "2 garlic cloves", "1 cup basil (optional)"]),
  ]),
];

/** A list for a soup and a salad, as a device keeps it when it was just made; nobody looks at it. */
export const marketList: DeviceList = {
  ...noDeviceList,
  made: { list: writtenList(listFor(supper), supper), own: [], ticked: [] },
};
