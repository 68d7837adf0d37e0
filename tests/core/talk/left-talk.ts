import { emptyLog } from "../../../core/cook/fold.ts";
import { decideHouse, numberedInHouse } from "../../../core/house/decide.ts";
import { appendHouse } from "../../../core/house/house.ts";
import type { HouseLog } from "../../../core/house/house.ts";
import { noDeviceList } from "../../../core/shop/at-hand.ts";
import { houseTalk } from "../../../core/talk/house-talk.ts";
import { silentDialogue } from "../../../core/talk/model.ts";
import type { Dialogue, Kitchen } from "../../../core/talk/model.ts";
import { respond } from "../../../core/talk/respond.ts";
import { at, kitchenAt } from "./supper.ts";

let count = 0;

/** A conversation after the supper, with no meal on; each line at its minute after five. */
export function talk(log: HouseLog, ...lines: readonly (readonly [number, string])[]) {
  let [house, dialogue]: [HouseLog, Dialogue] = [log, silentDialogue];
  const said: string[] = [];
  for (const [minute, words] of lines) {
    const kitchen = kitchenOver(house, minute, dialogue);
    const reply = respond(words, kitchen);
    for (const [index, order] of reply.house.entries()) {
      const command = { id: `${kitchen.utteranceId}-${index}`, at: at(minute), order };
      const decided = decideHouse(command, house);
      if (!decided.ok)
        throw new Error(`"${words}" was answered with an order that is refused: ${decided.error.code}`);
      house = appendHouse(house, numberedInHouse(command, house, decided.value));
    }
    dialogue = reply.dialogue;
    said.push(reply.say);
  }
  return { house: house.house, said };
}

/** The kitchen with no meal on, over such a house. */
export const kitchenOver = (log: HouseLog, minute: number, dialogue: Dialogue): Kitchen => ({
  ...kitchenAt(emptyLog, minute, dialogue),
  utteranceId: `left-${(count += 1)}`,
  household: { log, talk: houseTalk, list: noDeviceList },
});
