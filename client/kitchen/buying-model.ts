import type { ReadonlySignal } from "@preact/signals";
import type { WrittenList } from "../../core/shop/written-list.ts";
import type { BuyingAnswer, BuyingRequest } from "../../core/sync/buying-request.ts";

/** A list that this device keeps, with what was ticked on it. */
export interface KeptList {
  /** Changes with every list that is made. */
  readonly id: string;
  readonly list: WrittenList;
  readonly wanted: BuyingRequest;
  /** Lines of the house that could not be read. */
  readonly mistakes: BuyingAnswer["mistakes"];
  /** What the cook has written on it: "kitchen paper". */
  readonly own: readonly string[];
  /** The ids of the lines that are in the bag. */
  readonly ticked: readonly string[];
}

/** The buying list of this device: made by the server, kept here, so that it can be ticked far from it. */
export interface BuyingDesk {
  /** null: none has been made. */
  readonly kept: ReadonlySignal<KeptList | null>;
  /**
   * Makes a list with nothing ticked, and keeps it instead of the last one; what the cook wrote on that and has not ticked
   * goes over to it. A sentence where that failed, else null.
   */
  readonly begin: (wanted: BuyingRequest) => Promise<string | null>;
  /** The same for other meals, servings or another house; what is bought as before stays ticked. */
  readonly change: (wanted: BuyingRequest) => Promise<string | null>;
  readonly tick: (line: string) => void;
  /** Writes something more on the list; what is on it already is not written twice. */
  readonly write: (thing: string) => void;
  readonly throwAway: () => void;
}
