import type { BuyingDesk } from "./buying-model.ts";
import { onceUnlessFailed } from "./once-unless-failed.ts";

/** The buying list of this browser, one however often it is asked for; nothing of it is fetched before. */
export const lazyBuyingDesk = (): (() => Promise<BuyingDesk>) =>
  onceUnlessFailed(async () =>
    (await import("./buying-desk.ts")).createBuyingDesk(() => crypto.randomUUID()),
  );
