import captureWorkletUrl from "../workers/capture-worklet.ts?worker&url";
import { err, ok, type Result } from "../../core/units/result.ts";
import { listeningRate } from "../../core/speech/samples.ts";

/** An open microphone. */
export type Microphone = {
  /** Rate in Hz of the blocks that come out of `port`; a browser may refuse 16 kHz. */
  readonly rate: number;
  /** Float32Array blocks of 640 mono samples; transfer it to whoever listens. */
  readonly port: MessagePort;
  /** Closes the stream, the audio context and the worklet. */
  readonly close: () => Promise<void>;
};

/**
 * Asks for the microphone and joins it to a port. Call it from a touch: browsers start no audio without one.
 * @param onLost called once with a sentence when the microphone is taken away in the middle
 * Fails with one sentence: refused, missing, in use, or a browser that cannot.
 */
export async function openMicrophone(
  onLost: (sentence: string) => void,
): Promise<Result<Microphone, string>> {
  if (!window.isSecureContext || !("mediaDevices" in navigator)) {
    return err(
      "The browser gives no microphone to this page: open it by https, or on the machine itself as localhost.",
    );
  }
  let stream: MediaStream;
  try {
    stream = await navigator.mediaDevices.getUserMedia({
      audio: { channelCount: 1, echoCancellation: true, noiseSuppression: true, autoGainControl: true },
    });
  } catch (thrown) {
    return err(refusal(thrown));
  }
  try {
    return ok(await connect(stream, onLost));
  } catch (thrown) {
    for (const track of stream.getTracks()) track.stop();
    return err(
      `The browser cannot read the microphone (${thrown instanceof Error ? thrown.message : String(thrown)}). Type or tap instead.`,
    );
  }
}

async function connect(stream: MediaStream, onLost: (sentence: string) => void): Promise<Microphone> {
  const context = await contextFor(stream);
  try {
    await context.audio.audioWorklet.addModule(captureWorkletUrl);
    if (context.audio.state === "suspended") await context.audio.resume();
    const node = new AudioWorkletNode(context.audio, "capture", {
      numberOfInputs: 1,
      numberOfOutputs: 0,
      channelCount: 1,
      channelCountMode: "explicit",
    });
    const { port1, port2 } = new MessageChannel();
    node.port.postMessage({ port: port1 }, [port1]);
    context.source.connect(node);
    let isClosed = false;
    const close = async (): Promise<void> => {
      if (isClosed) return;
      isClosed = true;
      node.port.postMessage({ stop: true });
      context.source.disconnect();
      for (const track of stream.getTracks()) track.stop();
      await context.audio.close();
    };
    for (const track of stream.getAudioTracks()) {
      track.addEventListener("ended", () => {
        if (isClosed) return;
        void close();
        onLost("The microphone was taken away. Plug it in or allow it again, then turn listening on.");
      });
    }
    return { rate: context.audio.sampleRate, port: port2, close };
  } catch (thrown) {
    await context.audio.close();
    throw thrown;
  }
}

/** A context at 16 kHz where the browser joins a stream to one (Firefox may refuse), else at the device's rate. */
async function contextFor(
  stream: MediaStream,
): Promise<{ readonly audio: AudioContext; readonly source: MediaStreamAudioSourceNode }> {
  const wanted = new AudioContext({ sampleRate: listeningRate, latencyHint: "interactive" });
  try {
    return { audio: wanted, source: wanted.createMediaStreamSource(stream) };
  } catch {
    await wanted.close();
    const audio = new AudioContext({ latencyHint: "interactive" });
    return { audio, source: audio.createMediaStreamSource(stream) };
  }
}

function refusal(thrown: unknown): string {
  switch (thrown instanceof DOMException ? thrown.name : "") {
    case "NotAllowedError":
      return "The microphone is not allowed for this page. Allow it in the browser's address bar, then turn listening on.";
    case "NotFoundError":
      return "No microphone was found. Plug one in, then turn listening on; typing and tapping work meanwhile.";
    case "NotReadableError":
      return "Another program holds the microphone. Close that program, then turn listening on.";
    default:
      return `The microphone could not be opened (${thrown instanceof Error ? thrown.message : String(thrown)}). Type or tap instead.`;
  }
}
