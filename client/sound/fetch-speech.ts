import { err, ok, type Result } from "../../core/units/result.ts";

/** How a sentence is asked for. */
export interface SpeechQuery {
  readonly rate: number;
  /** "ahead": nobody waits for it yet. */
  readonly urgency: "now" | "ahead";
}

/**
 * Why there is no sound: "refused", this text can never be spoken; "unreachable", the voice is in trouble and other
 * texts would fare no better now.
 */
export interface SpeechFault {
  readonly kind: "refused" | "unreachable";
  readonly sentence: string;
}

/** Brings the sound of a text. Never rejects. */
export type FetchSpeech = (text: string, query: SpeechQuery) => Promise<Result<Uint8Array, SpeechFault>>;

const unreachable = "The kitchen's server cannot be reached for the voice; check that it runs.";

async function errorSentence(response: Response): Promise<string> {
  const body: unknown = await response.json().catch(() => null);
  const said = typeof body === "object" && body !== null && "error" in body ? body.error : null;
  return typeof said === "string" ? said : `The voice answered with the code ${response.status}; try again.`;
}

/**
 * Speech from the server's voice.
 * @param voice the bundled voice's name @param limitMs how long a cook is made to wait for a sentence
 */
export function httpSpeech(
  voice: string,
  limitMs = 4_000,
  fetcher: typeof fetch = (...request) => fetch(...request),
): FetchSpeech {
  return async (text, { rate, urgency }) => {
    const query = new URLSearchParams({ text, voice, rate: String(rate) });
    // RFC 9218: 3 is the ordinary urgency, 6 is for what may wait.
    const headers = { Priority: urgency === "ahead" ? "u=6" : "u=2" };
    try {
      const response = await fetcher(`/voice?${query.toString()}`, {
        headers,
        signal: AbortSignal.timeout(limitMs),
        credentials: "same-origin",
      });
      if (!response.ok)
        return err({
          kind: response.status === 400 ? "refused" : "unreachable",
          sentence: await errorSentence(response),
        });
      return ok(new Uint8Array(await response.arrayBuffer()));
    } catch {
      return err({ kind: "unreachable", sentence: unreachable });
    }
  };
}
