import type { ReadonlySignal } from "@preact/signals";
import type { DeviceList, ListOrder, MadeList } from "../../core/shop/at-hand.ts";
import type { BuyingAnswer, BuyingRequest } from "../../core/sync/buying-request.ts";

/** A list that this device keeps, with what was ticked on it. */
export interface KeptList extends MadeList {
  /** Changes with every list that is made. */
  readonly id: string;
  readonly wanted: BuyingRequest;
  /** Lines of the house that could not be read. */
  readonly mistakes: BuyingAnswer["mistakes"];
}

/** Something that the cook wrote on the list before the house could be told. */
export interface HandedOver {
  readonly name: string;
  readonly isBought: boolean;
}

/** The buying list of this device: made by the server, kept here, so that it can be ticked far from it. */
export interface BuyingDesk {
  /** null: none has been made. */
  readonly kept: ReadonlySignal<KeptList | null>;
  /** The same as answers need it. */
  readonly device: ReadonlySignal<DeviceList>;
  /**
   * Makes a list with nothing ticked, and keeps it instead of the last one; what the cook wrote on that and has not ticked
   * goes over to it. A sentence where that failed, else null.
   */
  readonly begin: (wanted: BuyingRequest) => Promise<string | null>;
  /** The same for other meals, servings or another house; what is bought as before stays ticked. */
  readonly change: (wanted: BuyingRequest) => Promise<string | null>;
  readonly obey: (orders: readonly ListOrder[]) => void;
  /** Writes something more on it while the house is not to be had; what is on it already is not written twice. */
  readonly write: (thing: string) => void;
  /** Gives away what was written so, for the house to keep. */
  readonly handOver: () => readonly HandedOver[];
  /** Somebody looks at the list, or no longer. */
  readonly look: (isOpen: boolean) => void;
  readonly throwAway: () => void;
}
