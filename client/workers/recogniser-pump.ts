import { defaultEndpointer } from "../../core/speech/endpointer.ts";
import { createHearing, type Hearing } from "../../core/speech/hearing.ts";
import { defaultHearingTimes } from "../../core/speech/hearing-settings.ts";
import type { Recogniser } from "../../core/speech/recogniser.ts";
import { changedBy, noGrammar } from "../../core/speech/grammar-change.ts";
import type { HandOut } from "../../core/speech/misheard/sound-to-hand-out.ts";
import type { HeardEvent } from "../../core/speech/hearing-event.ts";
import type { FromRecogniser, MessagePortLike, ToRecogniser } from "../../core/speech/recogniser-messages.ts";
import { createResampler } from "../../core/speech/resample.ts";
import { frameMs, listeningRate } from "../../core/speech/samples.ts";
import { usualTuning } from "../../core/speech/tuning.ts";
import type { VoiceDetector } from "../../core/speech/voice-detector.ts";

/** What a pump needs: its engine once the address of its files is known, and where answers go. */
export type PumpParts = {
  readonly createRecogniser: (base: string) => Recogniser;
  /** Null where voices are told from other sounds by their loudness alone. */
  readonly loadDetector: (base: string) => Promise<VoiceDetector | null>;
  /** Buffers among the second are given away with the message. */
  readonly post: (message: FromRecogniser, transfer: readonly ArrayBuffer[]) => void;
};

/** Sound waiting for a slow machine beyond this many ms is dropped rather than answered a minute late. */
const mostWaitingMs = 8_000;

/**
 * Takes messages one after another and answers in order, in a worker or in the page. Blocks of sound that
 * come while the engine loads are dropped: nobody was told yet that it listens.
 * @returns where messages go
 */
export function createRecogniserPump(parts: PumpParts): (message: ToRecogniser) => void {
  const pump = new RecogniserPump(parts);
  return (message) => pump.take(message);
}

class RecogniserPump {
  private readonly parts: PumpParts;
  private queue: Promise<void> = Promise.resolve();
  /** Of sound that is not heard yet. */
  private waitingMs = 0;
  private recogniser: Recogniser | null = null;
  private detector: VoiceDetector | null = null;
  private hearing: Hearing | null = null;
  private port: MessagePortLike | null = null;
  private tuning = usualTuning;
  private grammar = noGrammar;
  /** The engine cannot begin an utterance before it has had its first grammar, and the microphone may be sooner. */
  private knowsGrammar = false;
  /** Of a hearing that is made later, too. */
  private sounds: HandOut = "never";
  private rate = listeningRate;
  private toListeningRate = createResampler(listeningRate, listeningRate);

  constructor(parts: PumpParts) {
    this.parts = parts;
  }

  take(message: ToRecogniser): void {
    const lengthMs = message.kind === "audio" ? (message.samples.length / message.rate) * 1000 : 0;
    if (lengthMs > 0 && this.waitingMs >= mostWaitingMs) return;
    this.waitingMs += lengthMs;
    this.queue = this.queue
      .then(() => this.handle(message))
      .catch((thrown: unknown) => {
        this.hearing = null;
        const detail = thrown instanceof Error ? thrown.message : String(thrown);
        this.fail(`The speech recogniser stopped (${detail}). Turn listening on again.`);
      })
      .finally(() => (this.waitingMs -= lengthMs));
  }

  private async handle(message: ToRecogniser): Promise<void> {
    switch (message.kind) {
      case "load":
        return this.load(message.base);
      case "connect":
        return this.connect(message.port, message.rate);
      case "grammar":
        this.grammar = changedBy(this.grammar, message.change);
        return;
      case "listen-for": {
        const set = await this.hearing?.listenFor({ grammar: this.grammar, ...message.how }, message.when);
        if (set?.ok === true) this.knowsGrammar = true;
        if (set?.ok === false) this.post({ kind: "grammar-refused", sentence: set.error });
        return;
      }
      case "tune":
        this.tuning = message.tuning;
        return this.hearing?.tune(message.tuning);
      case "hand-out":
        this.sounds = message.sounds;
        return this.hearing?.handOut(message.sounds);
      case "audio":
        return this.listen(message.samples, message.rate);
      case "reset":
        return this.hearing?.reset();
      case "close":
        this.port?.close();
        this.recogniser?.free();
        await this.detector?.free();
        this.hearing = null;
        this.recogniser = null;
        this.detector = null;
    }
  }

  private async load(base: string): Promise<void> {
    const recogniser = this.parts.createRecogniser(base);
    const [loaded, detector] = await Promise.all([recogniser.load(), this.parts.loadDetector(base)]);
    if (!loaded.ok) {
      await detector?.free();
      return this.fail(loaded.error);
    }
    this.recogniser = recogniser;
    this.detector = detector;
    this.knowsGrammar = false;
    this.hearing = createHearing(
      { recogniser, detector },
      { ...defaultHearingTimes, endpointer: defaultEndpointer },
    );
    this.hearing.tune(this.tuning);
    this.hearing.handOut(this.sounds);
    this.post({ kind: "loaded" });
  }

  private async connect(port: MessagePortLike, rate: number): Promise<void> {
    this.port?.close();
    this.port = port;
    await this.hearing?.reset();
    port.addEventListener("message", ({ data }) => {
      if (data instanceof Float32Array) this.take({ kind: "audio", samples: data, rate });
    });
    port.start();
  }

  private async listen(samples: Float32Array, rate: number): Promise<void> {
    if (this.hearing === null || !this.knowsGrammar) return;
    if (this.rate !== rate) this.toListeningRate = createResampler(rate, listeningRate);
    this.rate = rate;
    for (const event of await this.hearing.accept(this.toListeningRate(samples))) {
      this.post(event.kind === "heard" ? { ...event, beganAgoMs: this.beganAgoMs(event) } : event);
    }
  }

  private beganAgoMs({ startedAtFrame, concludedAtFrame }: HeardEvent): number {
    return (concludedAtFrame - startedAtFrame) * frameMs + this.waitingMs;
  }

  private fail(sentence: string): void {
    this.post({ kind: "failed", sentence });
  }

  private post(message: FromRecogniser): void {
    const sound = message.kind === "heard" ? message.sound : null;
    const buffer = sound?.samples.buffer;
    this.parts.post(message, buffer instanceof ArrayBuffer ? [buffer] : []);
  }
}
