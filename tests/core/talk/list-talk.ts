import { emptyLog } from "../../../core/cook/fold.ts";
import { decideHouse, numberedInHouse } from "../../../core/house/decide.ts";
import { appendHouse, emptyHouseLog } from "../../../core/house/house.ts";
import type { HouseLog } from "../../../core/house/house.ts";
import { noDeviceList, tickedAfter } from "../../../core/shop/at-hand.ts";
import type { DeviceList, ListOrder } from "../../../core/shop/at-hand.ts";
import { houseTalk } from "../../../core/talk/house-talk.ts";
import { silentDialogue } from "../../../core/talk/model.ts";
import type { Dialogue, Kitchen } from "../../../core/talk/model.ts";
import { respond } from "../../../core/talk/respond.ts";
import { marketList } from "../shop/market-list.ts";
import { at, evening, kitchenAt } from "./supper.ts";

/** What a device has after some talk: the house, its own list, and the talk itself. */
export interface Device {
  readonly house: HouseLog;
  readonly list: DeviceList;
  readonly dialogue: Dialogue;
}

export const cooking = evening();
let count = 0;

export const kitchenOf = ({ house, list, dialogue }: Device, minute: number, log = emptyLog): Kitchen => ({
  ...kitchenAt(log, minute, dialogue),
  utteranceId: `list-${(count += 1)}`,
  household: { log: house, talk: houseTalk, list },
});

export const bare: Device = { house: emptyHouseLog, list: noDeviceList, dialogue: silentDialogue };
export const shopping: Device = { ...bare, list: { ...marketList, isOpen: true } };

/** The list once the device has done what was ordered. */
function afterOrders(list: DeviceList, orders: readonly ListOrder[], minute: number): DeviceList {
  return orders.reduce<DeviceList>((before, order) => {
    const { made, lastTick } = before;
    if (made === null) throw new Error("a tick without a list");
    const back = lastTick === null || !made.ticked.includes(lastTick.line) ? "Tick" : "Untick";
    const as =
      order.type === "UndoTick" && lastTick !== null ? ({ type: back, line: lastTick.line } as const) : order;
    const tick = order.type === "UndoTick" ? null : { line: order.line, at: at(minute) };
    return { ...before, made: { ...made, ticked: tickedAfter(made.ticked, as) }, lastTick: tick };
  }, list);
}

/** A conversation a minute a line; a meal is on where its log is given. */
export function talk(device: Device, lines: readonly string[], log = emptyLog) {
  const said: string[] = [];
  let [now, minute] = [device, 100];
  for (const line of lines) {
    minute += 1;
    const reply = respond(line, kitchenOf(now, minute, log));
    const house = reply.house.reduce((before, order, index) => {
      const command = { id: `t${count}-${index}`, at: at(minute), order };
      const decided = decideHouse(command, before);
      if (!decided.ok) throw new Error(`"${line}" was answered with a refused order: ${decided.error.code}`);
      return appendHouse(before, numberedInHouse(command, before, decided.value));
    }, now.house);
    now = { house, list: afterOrders(now.list, reply.list, minute), dialogue: reply.dialogue };
    said.push(reply.say);
  }
  return { ...now, said };
}
