import type { House } from "../../core/house/house.ts";
import type { WantedThings } from "../../core/house/wanted.ts";
import { listAtHand } from "../../core/shop/at-hand.ts";
import type { WrittenList } from "../../core/shop/written-list.ts";

/** What a house wants besides the meals and has not bought. @param house null: nothing is known of it */
export const wantedBesides = (house: House | null): WantedThings =>
  new Map([...(house?.wanted ?? [])].filter(([, { boughtAt }]) => boughtAt === null));

/** The list with what is wanted besides, where no meal takes that already. */
export const withWanted = (list: WrittenList, wanted: WantedThings): WrittenList =>
  listAtHand({ list, own: [], ticked: [] }, wanted)?.list ?? list;
