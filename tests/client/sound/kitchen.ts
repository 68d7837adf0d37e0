import type { AudioState } from "../../../client/sound/audio-output.ts";
import type { FetchSpeech, SpeechFault } from "../../../client/sound/fetch-speech.ts";
import type { LocalSpeech } from "../../../client/sound/local-speech.ts";
import { createSound, type Caption } from "../../../client/sound/player.ts";
import { ok } from "../../../core/units/result.ts";
import { fakeOutput, handClock } from "./fakes.ts";

const noLocal: LocalSpeech = {
  available: () => false,
  speak: () => {
    throw new Error("There is no local voice here.");
  },
};
/** What a voice in trouble answers. */
export const down: SpeechFault = { kind: "unreachable", sentence: "down" };

/** A whole sound layer on a fake loudspeaker and a clock turned by hand; the server's voice answers at once. */
export function kitchen(
  options: {
    readonly state?: AudioState;
    readonly fetchSpeech?: FetchSpeech;
    readonly local?: LocalSpeech;
  } = {},
) {
  const output = fakeOutput(options.state);
  const clock = handClock();
  const captions: Caption[] = [];
  const edges: string[] = [];
  const fetched: string[] = [];
  const sound = createSound({
    output,
    clock,
    local: options.local ?? noLocal,
    fetchSpeech:
      options.fetchSpeech ??
      ((text, { rate, urgency }) => {
        fetched.push(`${text} ${rate} ${urgency}`);
        return Promise.resolve(ok(new TextEncoder().encode(text)));
      }),
    onCaption: (caption) => captions.push(caption),
    onSpeaking: (edge) => edges.push(`${edge} ${clock.now() - 1_000_000}`),
  });
  return {
    output,
    clock,
    captions,
    edges,
    fetched,
    sound,
    lines: () => captions.map(({ kind, text }) => `${kind}: ${text}`),
  };
}
