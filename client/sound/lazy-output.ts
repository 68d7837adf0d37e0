import type { AudioOutput, AudioState, Playing, Ringing } from "./audio-output.ts";

/** The rate that chimes are rendered for before the real one is known, in Hz. */
const guessedRate = 48_000;

type RingShape = Parameters<AudioOutput["startRing"]>[1];

/**
 * An output that is fetched after the page stands: nothing can sound before the first touch anyway. Until it is
 * here it counts as locked; rings that begin meanwhile begin with it, and speech fails over to its caption.
 */
class LazyOutput implements AudioOutput {
  #real: AudioOutput | null = null;
  readonly #here: Promise<AudioOutput>;
  readonly #listeners = new Set<(state: AudioState) => void>();
  /** Chimes that were rendered for the guessed rate. */
  readonly #guessed = new WeakSet<Float32Array>();

  constructor(load: () => Promise<AudioOutput>) {
    this.#here = load().then((output) => {
      this.#real = output;
      output.onState((state) => {
        for (const listener of this.#listeners) listener(state);
      });
      return output;
    });
    // Without it the page stays locked and silent, and says so when something should sound.
    this.#here.catch(() => undefined);
  }

  state(): AudioState {
    return this.#real?.state() ?? "locked";
  }

  onState(listener: (state: AudioState) => void): () => void {
    this.#listeners.add(listener);
    return () => {
      this.#listeners.delete(listener);
    };
  }

  unlock(): Promise<AudioState> {
    // Once it is here this runs within the touch itself, as some browsers want it.
    if (this.#real !== null) return this.#real.unlock();
    return this.#here.then(
      (output) => output.unlock(),
      () => "locked",
    );
  }

  sampleRate(): number {
    return this.#real?.sampleRate() ?? guessedRate;
  }

  playSpeech(wav: Uint8Array, volume: number, onStart: () => void): Playing {
    return (
      this.#real?.playSpeech(wav, volume, onStart) ?? {
        ended: Promise.resolve("failed"),
        stop: () => undefined,
      }
    );
  }

  playTone(samples: Float32Array, volume: number): void {
    this.#real?.playTone(samples, volume);
  }

  startRing(samples: Float32Array, ring: RingShape): Ringing {
    if (this.#real !== null) return this.#real.startRing(this.#inTune(samples, this.#real), ring);
    this.#guessed.add(samples);
    return this.#laterRing(samples, ring);
  }

  ringBus(gain: number): void {
    this.#real?.ringBus(gain);
  }

  #laterRing(samples: Float32Array, ring: RingShape): Ringing {
    let [gain, isStopped] = [ring.gain, false];
    let sounding: Ringing | null = null;
    const begin = (output: AudioOutput): void => {
      if (!isStopped) sounding = output.startRing(this.#inTune(samples, output), { ...ring, gain });
    };
    this.#here.then(begin, () => undefined);
    return {
      loudness: (next) => {
        gain = next;
        sounding?.loudness(next);
      },
      stop: () => {
        isStopped = true;
        sounding?.stop();
      },
    };
  }

  /** A chime rendered for the guessed rate would sound a little high or low at another. */
  #inTune(samples: Float32Array, output: AudioOutput): Float32Array {
    const rate = output.sampleRate();
    if (rate === guessedRate || !this.#guessed.has(samples)) return samples;
    const step = guessedRate / rate;
    return Float32Array.from({ length: Math.round((samples.length * rate) / guessedRate) }, (_, index) => {
      const at = Math.floor(index * step);
      const part = index * step - at;
      return (samples[at] ?? 0) * (1 - part) + (samples[at + 1] ?? 0) * part;
    });
  }
}

/** @param load fetches the real output; called at once */
export function lazyOutput(load: () => Promise<AudioOutput>): AudioOutput {
  return new LazyOutput(load);
}
