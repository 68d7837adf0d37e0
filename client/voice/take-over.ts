import type { ToRecogniser } from "../../core/speech/recogniser-messages.ts";
import type { EngineLink, FromEngine } from "./engine.ts";

type Open = (onMessage: (message: FromEngine) => void) => EngineLink | Promise<EngineLink>;

/**
 * Opens an engine that may not load, and another in its place when it does not. What the page posts meanwhile waits
 * for the one that has loaded: a port can be given away only once.
 */
export function openWithSpare(
  first: Open,
  spare: Open,
  onMessage: (message: FromEngine) => void,
): EngineLink {
  return new SparedLink(first, spare, onMessage);
}

type Posted = readonly [message: ToRecogniser, transfer: readonly Transferable[]];

class SparedLink implements EngineLink {
  private readonly onMessage: (message: FromEngine) => void;
  private readonly spare: Open;
  private waiting: Posted[] | null = [];
  private link: EngineLink | null = null;
  /** Counts the engines opened: messages of one that was given up are late and mean nothing. */
  private turn = 0;
  private isClosed = false;

  constructor(first: Open, spare: Open, onMessage: (message: FromEngine) => void) {
    this.onMessage = onMessage;
    this.spare = spare;
    void this.open(first);
  }

  readonly post: EngineLink["post"] = (message, transfer) => {
    if (this.waiting === null) this.link?.post(message, transfer);
    else this.waiting.push([message, transfer]);
  };

  readonly close = (): void => {
    this.isClosed = true;
    this.waiting = [];
    this.link?.close();
  };

  private async open(how: Open): Promise<void> {
    const turn = ++this.turn;
    try {
      const link = await how((message) => {
        if (turn === this.turn && !this.isClosed) this.take(message);
      });
      // Given up or closed while it opened.
      if (turn !== this.turn || this.isClosed) return link.close();
      this.link = link;
      if (this.waiting === null) return;
      if (this.hasLoaded) this.pass();
    } catch (thrown) {
      const reason = thrown instanceof Error ? thrown.message : String(thrown);
      this.take({ kind: "failed", sentence: `The speech recogniser could not be opened (${reason}).` });
    }
  }

  private hasLoaded = false;

  private take(message: FromEngine): void {
    if (message.kind === "failed" && !this.hasLoaded && this.turn === 1)
      return this.takeOver(message.sentence);
    if (message.kind === "loaded") {
      this.hasLoaded = true;
      this.pass();
    }
    this.onMessage(message);
  }

  private takeOver(sentence: string): void {
    this.link?.close();
    this.link = null;
    const reason = sentence.replace(/\.$/, "");
    this.onMessage({
      kind: "took-over",
      sentence: `${reason}, so the built-in recogniser listens instead.`,
    });
    void this.open(this.spare);
  }

  /** Hands on what waited, once there is an engine and it has loaded. */
  private pass(): void {
    if (this.link === null || this.waiting === null) return;
    const posted = this.waiting;
    this.waiting = null;
    for (const [message, transfer] of posted) this.link.post(message, transfer);
  }
}
