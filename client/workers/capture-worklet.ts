/** The names a worklet's scope has, which the DOM's types leave out. */
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void;

/** 20 ms at 16 kHz, one frame of the endpointer. */
const blockSamples = 320;

/**
 * Pumps the microphone into a port, mono, block by block; the buffers are transferred. The port comes in the one
 * message of the page: {port} starts it, {stop} ends it.
 */
class CaptureProcessor extends AudioWorkletProcessor {
  private out: MessagePort | null = null;
  private stopped = false;
  private block = new Float32Array(blockSamples);
  private filled = 0;

  constructor() {
    super();
    this.port.onmessage = (event: MessageEvent<{ readonly port: MessagePort } | { readonly stop: true }>) => {
      if ("port" in event.data) this.out = event.data.port;
      else {
        this.stopped = true;
        this.out?.close();
      }
    };
  }

  /** Called by the browser for each 128 samples; false lets it take the processor away. */
  process(inputs: readonly (readonly Float32Array[])[]): boolean {
    const input = inputs[0]?.[0];
    if (input !== undefined) this.take(input);
    return !this.stopped;
  }

  private take(samples: Float32Array): void {
    for (let at = 0; at < samples.length;) {
      const count = Math.min(blockSamples - this.filled, samples.length - at);
      this.block.set(samples.subarray(at, at + count), this.filled);
      this.filled += count;
      at += count;
      if (this.filled < blockSamples) continue;
      this.out?.postMessage(this.block, [this.block.buffer]);
      this.block = new Float32Array(blockSamples);
      this.filled = 0;
    }
  }
}

registerProcessor("capture", CaptureProcessor);
