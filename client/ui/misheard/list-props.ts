import type { Clock } from "../../kitchen/clock.ts";
import type { MisheardRecord } from "../../kitchen/misheard-model.ts";

/** What the list of misheard sentences needs. */
export interface ListProps {
  readonly record: MisheardRecord;
  readonly clock: Clock;
}
