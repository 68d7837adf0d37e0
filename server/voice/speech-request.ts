import { err, ok, type Result } from "../../core/units/result.ts";
import { speakable } from "../../core/sound/speakable.ts";

/** The bundled voices; slt is the most natural, kal16 the fastest. */
export const voiceNames = ["slt", "kal16", "rms", "awb", "kal"] as const;
export type VoiceName = (typeof voiceNames)[number];

/** Slowest and fastest speech, as a multiple of the voice's own pace. */
export const rateLimits = { slowest: 0.5, fastest: 2 } as const;

/** Longest text taken, in characters as written; a breath is far less. */
export const maxTextLength = 400;
/** Longest text after numbers and abbreviations have become words, in characters. */
const maxSpokenLength = 1_600;

/** What the synthesiser is given: plain words, a voice, and how far to stretch the sounds. */
export interface SpeechJob {
  /** Printable ASCII only. */
  readonly words: string;
  readonly voice: VoiceName;
  /** 1 is the voice's own pace, 2 is twice as slow. */
  readonly stretch: number;
}

function controlCharacters(text: string): boolean {
  // Line ends and tabs are white space in any text a cook types; the rest has no sound and no business here.
  return /[^\P{C}\n\r\t\u200d\u00ad]/u.test(text);
}

/** Checks a text and puts it into words; refuses with one sentence. */
export function speechJob(
  text: string,
  options: { readonly voice: VoiceName; readonly rate: number },
): Result<SpeechJob, string> {
  if (text.length > maxTextLength) {
    return err(
      `The text has ${text.length} characters, but at most ${maxTextLength} can be spoken at once; split it.`,
    );
  }
  if (controlCharacters(text))
    return err("The text holds control characters, which cannot be spoken; remove them.");
  const { slowest, fastest } = rateLimits;
  if (!(options.rate >= slowest && options.rate <= fastest)) {
    return err(`The rate must lie between ${slowest} and ${fastest}; 1 is the voice's own pace.`);
  }
  const words = speakable(text);
  if (!/[a-z0-9]/i.test(words)) return err("There is nothing to say in the text; give at least one word.");
  if (words.length > maxSpokenLength)
    return err("The text becomes too long once its numbers are spelt out; split it.");
  return ok({ words, voice: options.voice, stretch: 100 / Math.round(options.rate * 100) });
}
