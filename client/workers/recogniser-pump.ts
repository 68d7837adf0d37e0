import { type Acceptance, embeddedAcceptance } from "../../core/speech/acceptance.ts";
import { defaultEndpointer } from "../../core/speech/endpointer.ts";
import { createHearing, defaultHearingTimes, type Hearing } from "../../core/speech/hearing.ts";
import type { Recogniser } from "../../core/speech/recogniser.ts";
import type { FromRecogniser, MessagePortLike, ToRecogniser } from "../../core/speech/recogniser-messages.ts";
import { createResampler } from "../../core/speech/resample.ts";
import { listeningRate } from "../../core/speech/samples.ts";

/** What a pump needs: its engine once the address of its files is known, and where answers go. */
export type PumpParts = {
  readonly createRecogniser: (base: string) => Recogniser;
  readonly post: (message: FromRecogniser) => void;
  readonly acceptance?: Acceptance;
};

/** Sound waiting for a slow machine beyond this many blocks is dropped rather than answered a minute late. */
const mostWaiting = 200;

/**
 * Takes messages one after another and answers in order, in a worker or in the page. Blocks of sound that
 * come while the engine loads are dropped: nobody was told yet that it listens.
 * @returns where messages go
 */
export function createRecogniserPump(parts: PumpParts): (message: ToRecogniser) => void {
  let queue: Promise<void> = Promise.resolve();
  let waiting = 0;
  let recogniser: Recogniser | null = null;
  let hearing: Hearing | null = null;
  let port: MessagePortLike | null = null;
  let toListeningRate: {
    readonly rate: number;
    readonly resample: (block: Float32Array) => Float32Array;
  } | null = null;

  const fail = (sentence: string): void => parts.post({ kind: "failed", sentence });
  const load = async (base: string): Promise<void> => {
    const made = parts.createRecogniser(base);
    const loaded = await made.load();
    if (!loaded.ok) return fail(loaded.error);
    recogniser = made;
    hearing = createHearing(made, {
      ...defaultHearingTimes,
      endpointer: defaultEndpointer,
      acceptance: parts.acceptance ?? embeddedAcceptance,
    });
    parts.post({ kind: "loaded" });
  };
  const listen = async (samples: Float32Array, rate: number): Promise<void> => {
    if (hearing === null) return;
    if (toListeningRate?.rate !== rate)
      toListeningRate = { rate, resample: createResampler(rate, listeningRate) };
    for (const event of await hearing.accept(toListeningRate.resample(samples))) parts.post(event);
  };
  const connect = async (next: MessagePortLike, rate: number): Promise<void> => {
    port?.close();
    port = next;
    toListeningRate = null;
    await hearing?.reset();
    next.addEventListener("message", ({ data }) => {
      if (data instanceof Float32Array) take({ kind: "audio", samples: data, rate });
    });
    next.start();
  };
  const handle = async (message: ToRecogniser): Promise<void> => {
    switch (message.kind) {
      case "load":
        return load(message.base);
      case "connect":
        return connect(message.port, message.rate);
      case "listen-for": {
        const set = await hearing?.listenFor(message.what, message.when);
        if (set?.ok === false) parts.post({ kind: "grammar-refused", sentence: set.error });
        return;
      }
      case "audio":
        return listen(message.samples, message.rate);
      case "reset":
        return hearing?.reset();
      case "close":
        port?.close();
        recogniser?.free();
        hearing = null;
        recogniser = null;
    }
  };
  const take = (message: ToRecogniser): void => {
    if (message.kind === "audio" && waiting >= mostWaiting) return;
    waiting++;
    queue = queue
      .then(() => handle(message))
      .catch((thrown: unknown) => {
        hearing = null;
        fail(
          `The speech recogniser stopped (${thrown instanceof Error ? thrown.message : String(thrown)}). Turn listening on again.`,
        );
      })
      .finally(() => waiting--);
  };
  return take;
}
