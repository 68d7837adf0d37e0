import { describe, expect, it } from "vitest";
import {
  evolveListening,
  initialListening,
  listenerState,
  type Listening,
  type ListeningInput,
  listenForNow,
} from "../../../core/speech/listening.ts";
import type { Verdict } from "../../../core/speech/verdict.ts";
import { grammarOf } from "../../voice/grammars.ts";

const grammar = grammarOf("next step");
const command: Verdict = {
  kind: "command",
  words: ["next", "step"],
  confidence: 1,
  rivals: [],
  addressed: true,
};
const after = (...inputs: readonly ListeningInput[]): Listening =>
  inputs.reduce(evolveListening, initialListening(grammar, "listen kitchen"));
const awake: readonly ListeningInput[] = [{ kind: "start" }, { kind: "loaded" }];

describe("listening", () => {
  it("[V2] an ear that is awake listens for the address", () => {
    expect(listenForNow(after(...awake))).toEqual({
      grammar,
      address: "listen kitchen",
      mode: "addressed",
      stopSentences: [],
    });
    expect(listenerState(after(...awake))).toEqual({ kind: "listening", mode: "addressed" });
  });

  it("[V13] a window needs no address and closes at its time", () => {
    const open = after(...awake, { kind: "window", until: 5000 });
    expect(listenForNow(open).mode).toBe("open");
    expect(listenForNow(evolveListening(open, { kind: "time", now: 4999 })).mode).toBe("open");
    expect(listenForNow(evolveListening(open, { kind: "time", now: 5000 })).mode).toBe("addressed");
  });

  it("[V13] a window stays open for the sentence that began in it", () => {
    const speaking = after(
      ...awake,
      { kind: "window", until: 5000 },
      { kind: "speech-started" },
      { kind: "time", now: 6000 },
    );
    expect(listenForNow(speaking).mode).toBe("open");
    const done = [
      { kind: "heard", verdict: command },
      { kind: "time", now: 6500 },
    ] as const;
    expect(listenForNow(done.reduce(evolveListening, speaking)).mode).toBe("addressed");
  });

  it("[V13] a tap listens for one command, a second needs the address", () => {
    const heard = after(...awake, { kind: "once", until: 8000 }, { kind: "heard", verdict: command });
    expect(listenerState(heard)).toEqual({ kind: "thinking" });
    expect(listenForNow(heard).mode).toBe("addressed");
  });

  it("[V13] chatter does not use a tap up", () => {
    const heard = after(
      ...awake,
      { kind: "once", until: 8000 },
      { kind: "heard", verdict: { kind: "none", why: "chatter" } },
    );
    expect(listenForNow(heard).mode).toBe("open");
  });

  it("[V13] a shorter window does not cut a longer one short", () => {
    expect(after({ kind: "window", until: 9000 }, { kind: "window", until: 5000 }).openUntil).toBe(9000);
  });

  const muted = { stopSentences: ["stop", "wait"], address: "listen kitchen" };

  it("[V14] while the caller speaks all but the stop sentences need the address, whatever window is open", () => {
    const state = after(...awake, { kind: "window", until: 5000 }, { kind: "mute", muted });
    expect(listenForNow(state)).toEqual({ grammar, mode: "stop-only", ...muted });
    expect(listenForNow(evolveListening(state, { kind: "unmute", openUntil: null })).mode).toBe("open");
  });

  it("[V14] where the caller speaks the address itself, not even that is heard", () => {
    const state = after(...awake, { kind: "mute", muted: { ...muted, address: null } });
    expect(listenForNow(state).address).toBeNull();
    expect(listenForNow(evolveListening(state, { kind: "unmute", openUntil: null })).address).toBe(
      "listen kitchen",
    );
  });

  it("[V13] falling silent opens a window in the same moment, and never shortens one", () => {
    const silent = after(...awake, { kind: "mute", muted }, { kind: "unmute", openUntil: 5000 });
    expect([listenForNow(silent).mode, silent.openUntil]).toEqual(["open", 5000]);
    expect(evolveListening(silent, { kind: "unmute", openUntil: null }).openUntil).toBe(5000);
  });

  it("[V18] a failure is shown with its sentence, and listening may be started again", () => {
    const failed = after({ kind: "start" }, { kind: "failed", sentence: "No microphone." });
    expect(listenerState(failed)).toEqual({ kind: "failed", sentence: "No microphone." });
    expect(listenerState(evolveListening(failed, { kind: "start" }))).toEqual({ kind: "loading" });
  });

  it("[V18] what arrives after closing changes nothing that is shown", () => {
    const late: readonly ListeningInput[] = [
      { kind: "close" },
      { kind: "loaded" },
      { kind: "speech-started" },
      { kind: "heard", verdict: command },
    ];
    expect(listenerState(after(...awake, ...late))).toEqual({ kind: "off" });
  });
});
