import { onceUnlessFailed } from "./once-unless-failed.ts";
import type { Words } from "./words.ts";

/** Words that come after the page, and are waited for meanwhile. */
export interface LateWords {
  readonly areHere: () => boolean;
  /** Rejects where they cannot be fetched; the next call tries again. */
  readonly fetch: () => Promise<Words>;
  /** Fetches them, again and again until they are here. */
  readonly fetchUntilHere: () => void;
  /** Done at once where they are here, and else as soon as they are, in the order in which it was asked for. */
  readonly use: (deed: (words: Words) => void) => void;
  readonly close: () => void;
}

const missing =
  "I cannot understand words while the server is away. Touching works, and what you type is answered when it is back.";

const retryMs = 2_000;

/**
 * Fetches nothing before it is asked to.
 * @param tell told one sentence where they cannot be fetched, and again whenever a sentence must wait for them
 */
export function lateWords(load: () => Promise<Words>, tell: (sentence: string) => void): LateWords {
  const late = new Late(load, tell);
  return {
    areHere: () => late.here !== null,
    fetch: late.fetch,
    fetchUntilHere: late.fetchUntilHere,
    use: late.use,
    close: late.close,
  };
}

class Late {
  here: Words | null = null;
  readonly fetch: () => Promise<Words>;
  private readonly tell: (sentence: string) => void;
  private waiting: ((words: Words) => void)[] = [];
  private hasFailed = false;
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor(load: () => Promise<Words>, tell: (sentence: string) => void) {
    this.tell = tell;
    this.fetch = onceUnlessFailed(async () => this.come(await load()));
  }

  readonly fetchUntilHere = (): void => {
    this.fetch().catch(() => this.fail());
  };

  readonly use: LateWords["use"] = (deed) => {
    if (this.here !== null) {
      deed(this.here);
      return;
    }
    this.waiting.push(deed);
    if (this.hasFailed) this.tell(missing);
    this.fetchUntilHere();
  };

  readonly close = (): void => {
    clearTimeout(this.timer);
    this.waiting = [];
  };

  private come(words: Words): Words {
    clearTimeout(this.timer);
    this.here = words;
    for (const deed of this.waiting.splice(0)) deed(words);
    return words;
  }

  private fail(): void {
    if (!this.hasFailed) this.tell(missing);
    this.hasFailed = true;
    clearTimeout(this.timer);
    this.timer = setTimeout(this.fetchUntilHere, retryMs);
  }
}
