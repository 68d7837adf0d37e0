import { describe, expect, it } from "vitest";
import {
  evolveListening,
  initialListening,
  listenerState,
  type Listening,
  type ListeningInput,
  listenForNow,
  stopGrammar,
} from "../../../core/speech/listening.ts";
import type { Verdict } from "../../../core/speech/acceptance.ts";

const grammar = stopGrammar(["next step"]);
const command: Verdict = { kind: "command", words: ["next", "step"], confidence: 1, addressed: true };
const after = (...inputs: readonly ListeningInput[]): Listening =>
  inputs.reduce(evolveListening, initialListening(grammar, "okay kitchen"));
const awake: readonly ListeningInput[] = [{ kind: "start" }, { kind: "loaded" }];

describe("listening", () => {
  it("[V2] an ear that is awake listens for the address", () => {
    expect(listenForNow(after(...awake))).toEqual({ grammar, address: "okay kitchen", mode: "addressed" });
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

  it("[V14] while the caller speaks only the stop words are heard, whatever window is open", () => {
    const muted = after(
      ...awake,
      { kind: "window", until: 5000 },
      { kind: "mute", stopWords: ["stop", "wait"] },
    );
    expect(listenForNow(muted)).toEqual({
      grammar: stopGrammar(["stop", "wait"]),
      address: "okay kitchen",
      mode: "stop-only",
    });
    expect(listenForNow(evolveListening(muted, { kind: "unmute" })).mode).toBe("open");
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
