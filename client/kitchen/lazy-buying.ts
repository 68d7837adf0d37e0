import type { BuyingDesk } from "./buying-model.ts";
import type { Clock } from "./clock.ts";
import { onceUnlessFailed } from "./once-unless-failed.ts";

/** The buying list of this browser, one however often it is asked for; nothing of it is fetched before. */
export const lazyBuyingDesk = ({ read }: Pick<Clock, "read">): (() => Promise<BuyingDesk>) =>
  onceUnlessFailed(async () =>
    (await import("./buying-desk.ts")).createBuyingDesk(() => crypto.randomUUID(), read),
  );
