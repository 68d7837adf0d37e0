import { describe, expect, it } from "vitest";
import { changeOf, noGrammar } from "../../../../core/speech/grammar-change.ts";
import { defaultEndpointer } from "../../../../core/speech/endpointer.ts";
import { expectation } from "../../../../core/speech/expectation.ts";
import { createHearing, type Hearing } from "../../../../core/speech/hearing.ts";
import { defaultHearingTimes } from "../../../../core/speech/hearing-settings.ts";
import type { HearingEvent } from "../../../../core/speech/hearing-event.ts";
import { type HandOut, soundToHandOut } from "../../../../core/speech/misheard/sound-to-hand-out.ts";
import type { ListenFor, ListeningMode, Recogniser } from "../../../../core/speech/recogniser.ts";
import type { FromRecogniser } from "../../../../core/speech/recogniser-messages.ts";
import type { Verdict } from "../../../../core/speech/verdict.ts";
import { ok } from "../../../../core/units/result.ts";
import { createRecogniserPump } from "../../../../client/workers/recogniser-pump.ts";
import { grammarOf, listenTo } from "../../../voice/grammars.ts";

const command: Verdict = {
  kind: "command",
  words: ["next", "step"],
  confidence: 1,
  rivals: [],
  addressed: true,
};
const doubtful: Verdict = { kind: "none", why: "doubtful" };
const chatter: Verdict = { kind: "none", why: "chatter" };

/** A recogniser that has written these words down and comes to this verdict. */
function scripted(words: string, verdict: Verdict): Recogniser {
  const written = words.split(" ").filter(Boolean);
  return {
    load: () => Promise.resolve(ok(null)),
    whole: () => Promise.resolve(),
    setGrammar: () => Promise.resolve(ok(null)),
    accept: () => undefined,
    mayBegin: () => undefined,
    partial: () => written,
    anticipate: () => Promise.resolve({ words: [], isAll: true }),
    goOn: () => undefined,
    end: () => Promise.resolve(verdict),
    forget: () => Promise.resolve(),
    free: () => undefined,
  };
}

const block = (kind: "voice" | "quiet"): Float32Array =>
  Float32Array.from({ length: 640 }, (_, n) =>
    kind === "voice" ? 0.14 * Math.sin(n * 0.3) : 1e-4 * Math.sin(n * 1.7),
  );

async function play(hearing: Hearing, ms: number, kind: "voice" | "quiet"): Promise<readonly HearingEvent[]> {
  const events: HearingEvent[] = [];
  for (let at = 0; at < ms / 40; at++) events.push(...(await hearing.accept(block(kind))));
  return events;
}

const what = (mode: ListeningMode): ListenFor =>
  listenTo(grammarOf("next step"), { address: "listen kitchen", mode });

/** The sound that comes with one utterance, said for a second. */
async function soundOf(
  words: string,
  verdict: Verdict,
  mode: ListeningMode,
  sounds: HandOut | "not told" = "maybe-misheard",
) {
  const settings = { ...defaultHearingTimes, endpointer: defaultEndpointer };
  const hearing = createHearing({ recogniser: scripted(words, verdict), detector: null }, settings);
  await hearing.listenFor(what(mode), "after-utterance");
  if (sounds !== "not told") hearing.handOut(sounds);
  const events = [
    ...(await play(hearing, 800, "quiet")),
    ...(await play(hearing, 1_000, "voice")),
    ...(await play(hearing, 1_200, "quiet")),
  ];
  const heard = events.flatMap((event) => (event.kind === "heard" ? [event] : []));
  expect(heard.length).toBeGreaterThan(0);
  return heard[0]?.sound ?? null;
}

describe("the sound of a sentence", () => {
  it.each(["not told", "never"] as const)(
    "[V90] stays with the ear where handing out is %j",
    async (sounds) => {
      expect(await soundOf("listen kitchen next step", command, "addressed", sounds)).toBeNull();
      expect(await soundOf("listen kitchen nest stab", doubtful, "addressed", sounds)).toBeNull();
    },
  );

  it("[V91] is handed out with a command, and with what came to nothing after the address", async () => {
    const ofCommand = await soundOf("listen kitchen next step", command, "addressed");
    expect(ofCommand?.words).toEqual(["next", "step"]);
    const ofNothing = await soundOf("listen kitchen nest stab", doubtful, "addressed");
    expect(ofNothing?.words).toEqual(["nest", "stab"]);
    for (const sound of [ofCommand, ofNothing]) {
      // The second that was spoken, its pre-roll and the quiet that ended it.
      expect(sound?.samples.length).toBeGreaterThan(16_000);
      expect(sound?.samples.length).toBeLessThan(2.2 * 16_000);
    }
  });

  it.each([
    ["other talk", "pass me the salt please", chatter, "addressed"],
    ["what in an open window resembled a command", "next staff", doubtful, "open"],
    ["half the address", "the kitchen is cold", doubtful, "addressed"],
    ["nothing that could be written down", "", doubtful, "addressed"],
    ["chatter that was bent into the address", "listen kitchen", chatter, "addressed"],
    ["the address alone", "listen kitchen", { kind: "address-only" }, "addressed"],
    [
      "a stop without the address while the caller speaks",
      "stop",
      { ...command, addressed: false },
      "stop-only",
    ],
  ] as const)("[V91] never is for %s", async (_what, words, verdict, mode) => {
    expect(await soundOf(words, verdict, mode)).toBeNull();
  });

  it("[V91] is its first twelve seconds at most", () => {
    const frames = Array.from({ length: 700 }, (_, at) => new Float32Array(320).fill(at / 700));
    const words = ["listen", "kitchen", "and", "so", "on"];
    const expected = expectation(what("addressed"));
    const sound = soundToHandOut({ frames, verdict: doubtful, words, expected });
    expect(sound?.samples.length).toBe(12 * 16_000);
    expect(sound?.samples[0]).toBe(0);
  });
});

describe("the worker", () => {
  /** What a worker posts while somebody speaks once, having been told this. */
  async function posted(...told: readonly HandOut[]) {
    const messages: { readonly message: FromRecogniser; readonly transfer: readonly ArrayBuffer[] }[] = [];
    const take = createRecogniserPump({
      createRecogniser: () => scripted("listen kitchen nest stab", doubtful),
      loadDetector: () => Promise.resolve(null),
      post: (message, transfer) => messages.push({ message, transfer }),
    });
    for (const sounds of told) take({ kind: "hand-out", sounds });
    take({ kind: "load", base: "/" });
    const { grammar, ...how } = what("addressed");
    take({ kind: "grammar", change: changeOf(noGrammar, grammar) });
    take({ kind: "listen-for", how, when: "after-utterance" });
    const kinds = [...Array<"quiet">(20).fill("quiet"), ...Array<"voice">(25).fill("voice")];
    for (const kind of [...kinds, ...Array<"quiet">(30).fill("quiet")])
      take({ kind: "audio", samples: block(kind), rate: 16_000 });
    await expect.poll(() => messages.some(({ message }) => message.kind === "heard")).toBe(true);
    return messages.filter(({ message }) => message.kind === "heard");
  }

  it("[V90] posts no sound before it is told to, nor after it is told not to", async () => {
    for (const told of [[], ["never"], ["maybe-misheard", "never"]] as const) {
      const [heard] = await posted(...told);
      expect(heard).toMatchObject({ message: { sound: null }, transfer: [] });
    }
  });

  it("[V90] gives the sound away with its message once it is told to, before it has loaded as well", async () => {
    const [heard] = await posted("maybe-misheard");
    expect(heard?.message).toMatchObject({ sound: { words: ["nest", "stab"] } });
    expect(heard?.transfer).toHaveLength(1);
  });
});
