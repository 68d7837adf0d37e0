import { describe, expect, it } from "vitest";
import type { AudioState } from "../../../client/sound/audio-output.ts";
import type { FetchSpeech, SpeechFault } from "../../../client/sound/fetch-speech.ts";
import type { LocalSpeech } from "../../../client/sound/local-speech.ts";
import { createSound, type Caption } from "../../../client/sound/player.ts";
import { err, ok } from "../../../core/units/result.ts";
import { fakeOutput, handClock, settle } from "./fakes.ts";

const noLocal: LocalSpeech = { available: () => false, speak: () => { throw new Error("There is no local voice here."); } };
const down: SpeechFault = { kind: "unreachable", sentence: "down" };

function kitchen(options: { readonly state?: AudioState; readonly fetchSpeech?: FetchSpeech; readonly local?: LocalSpeech } = {}) {
  const output = fakeOutput(options.state);
  const clock = handClock();
  const captions: Caption[] = [];
  const edges: string[] = [];
  const fetched: string[] = [];
  const sound = createSound({
    output,
    clock,
    local: options.local ?? noLocal,
    fetchSpeech: options.fetchSpeech ?? ((text, { rate, urgency }) => {
      fetched.push(`${text} ${rate} ${urgency}`);
      return Promise.resolve(ok(new TextEncoder().encode(text)));
    }),
    onCaption: (caption) => captions.push(caption),
    onSpeaking: (edge) => edges.push(`${edge} ${clock.now() - 1_000_000}`),
  });
  return { output, clock, captions, edges, fetched, sound, lines: () => captions.map(({ kind, text }) => `${kind}: ${text}`) };
}

describe("saying things", () => {
  it("[S40] everything said is a caption, and goes into the journal once it has been heard", async () => {
    const { sound, output, captions, clock } = kitchen();
    const done = sound.say("Stir the soup.", { priority: "answer" });
    await settle();
    expect(captions).toEqual([{ id: 1, kind: "speech", text: "Stir the soup.", priority: "answer", at: 1_000_000 }]);
    expect(sound.journal()).toEqual([]);
    await clock.turn(900);
    output.endSpeech();
    expect(await done).toBe("said");
    expect(sound.journal()).toEqual([{ kind: "said", text: "Stir the soup.", at: 1_000_900 }]);
  });

  it("[S41] it speaks from the first sound until 300 ms after the last, without a gap between two sentences", async () => {
    const { sound, output, edges, clock } = kitchen();
    void sound.say("One.");
    void sound.say("Two.");
    await clock.turn(500);
    output.endSpeech();
    await clock.turn(700);
    expect([edges, sound.isSpeaking()]).toEqual([["start 0"], true]);
    output.endSpeech();
    await clock.turn(299);
    expect(sound.isSpeaking()).toBe(true);
    await clock.turn(1);
    expect([edges, sound.isSpeaking()]).toEqual([["start 0", "end 1500"], false]);
  });

  it("[S42] what is urgent goes first; the rest keeps its order", async () => {
    const { sound, output } = kitchen();
    const order: string[] = [];
    const say = (text: string, priority: "ring" | "answer" | "cue"): void => { void sound.say(text, { priority }).then(() => order.push(text)); };
    say("ring 1", "ring"); say("cue 1", "cue"); say("answer 1", "answer"); say("cue 2", "cue"); say("ring 2", "ring"); say("answer 2", "answer");
    for (let i = 0; i < 6; i += 1) { await settle(); output.endSpeech(); }
    await settle();
    expect(order).toEqual(["ring 1", "ring 2", "answer 1", "answer 2", "cue 1", "cue 2"]);
  });

  it("[S42] a cue cut short by something more urgent is said again from its beginning, before other cues", async () => {
    const { sound, output, captions } = kitchen();
    const cue = sound.say("Turn the flatbreads.");
    void sound.say("Taste the soup.");
    await settle();
    void sound.say("The beans are done.", { priority: "ring" });
    for (let i = 0; i < 3; i += 1) { await settle(); output.endSpeech(); }
    expect(await cue).toBe("said");
    await settle();
    expect(captions.map(({ id, text }) => `${id} ${text}`)).toEqual(["1 Turn the flatbreads.", "3 The beans are done.", "1 Turn the flatbreads.", "2 Taste the soup."]);
    expect(sound.journal().map(({ kind, text }) => `${kind} ${text}`)).toEqual(["cut Turn the flatbreads.", "said The beans are done.", "said Turn the flatbreads.", "said Taste the soup."]);
  });

  it("[S43] stop talking ends the sentence at once, forgets what waits, and leaves the rings alone", async () => {
    const { sound, output } = kitchen();
    sound.ring("beans", 0, 1);
    const ends = ["One.", "Two."].map((text) => sound.say(text));
    await settle();
    sound.stopTalking();
    expect(await Promise.all(ends)).toEqual(["stopped", "stopped"]);
    expect([output.told.includes("stop One."), output.told.some((line) => line.includes("Two")), sound.ringing()]).toEqual([true, false, ["beans"]]);
  });

  it("[S43] stopping in the moment before the sound has come keeps it from being heard at all", async () => {
    const { sound, output } = kitchen();
    const end = sound.say("One.");
    sound.stopTalking();
    expect(await end).toBe("stopped");
    expect(output.told).toEqual([]);
  });

  it("[S44] louder and softer, slower and faster go in steps and say when they can go no further", async () => {
    const { sound, output, fetched } = kitchen();
    expect([sound.louder(), sound.louder()]).toEqual([{ value: 1, moved: true }, { value: 1, moved: false }]);
    for (let i = 0; i < 9; i += 1) { sound.softer(); sound.slower(); }
    expect([sound.softer(), sound.slower()]).toEqual([{ value: 0.16, moved: false }, { value: 0.7, moved: false }]);
    expect(sound.faster()).toEqual({ value: 0.85, moved: true });
    void sound.say("Stir.", { volume: 0.5 });
    await settle();
    expect([output.told, fetched]).toEqual([["speech Stir. 0.08"], ["Stir. 0.85 now"]]);
  });

  it("[S45] what was fetched ahead is not fetched again, and at most forty sentences are", async () => {
    const { sound, output, fetched } = kitchen();
    sound.prefetch(Array.from({ length: 60 }, (_unused, i) => `Step ${i}.`));
    for (let i = 0; i < 50; i += 1) await settle();
    expect([fetched.length, fetched[0], fetched[39]]).toEqual([40, "Step 0. 1 ahead", "Step 39. 1 ahead"]);
    void sound.say("Step 7.");
    await settle();
    expect([output.told, fetched.length]).toEqual([["speech Step 7. 0.63"], 40]);
  });

  it("[S45] a text beyond the server's limit is spoken piece by piece", async () => {
    const { sound, output } = kitchen();
    const end = sound.say(`${"Stir it well now. ".repeat(40)}End.`);
    for (let i = 0; i < 4; i += 1) { await settle(); output.endSpeech(); }
    expect(await end).toBe("said");
    expect(output.told.length).toBe(2);
    for (const line of output.told) expect(line.length).toBeLessThan(400);
  });
});

describe("without a voice", () => {
  const unreachable: FetchSpeech = () => Promise.resolve(err(down));

  it("[S46] the device's own voice takes over while the server's cannot be reached", async () => {
    const spoken: string[] = [];
    const local: LocalSpeech = { available: () => true, speak: (text, _options, onStart) => { spoken.push(text); onStart(); return { ended: Promise.resolve("ended"), stop: () => undefined }; } };
    const { sound, lines, edges } = kitchen({ fetchSpeech: unreachable, local });
    expect(await sound.say("Stir.")).toBe("said");
    expect([spoken, lines(), edges]).toEqual([["Stir."], ["speech: Stir."], ["start 0"]]);
  });

  it("[S46] with no voice at all the captions stand long enough to be read, and one sentence says so once", async () => {
    const { sound, lines, clock, edges } = kitchen({ fetchSpeech: unreachable });
    const ends = [sound.say("Stir."), sound.say("Taste.")];
    await clock.turn(1_000);
    expect(lines()).toEqual(["speech: Stir.", "notice: The voice cannot be reached and this device has none of its own; read here what I would say."]);
    await clock.turn(5_000);
    expect(await Promise.all(ends)).toEqual(["shown", "shown"]);
    expect([lines().at(-1), lines().length, edges]).toEqual(["speech: Taste.", 3, []]);
  });

  it("[S46] after a failure the server is left alone for five seconds, then asked again", async () => {
    let [asked, works] = [0, false];
    const { sound, clock, output } = kitchen({ fetchSpeech: (text) => { asked += 1; return Promise.resolve(works ? ok(new TextEncoder().encode(text)) : err(down)); } });
    void sound.say("One.");
    void sound.say("Two.");
    await clock.turn(4_000);
    expect(asked).toBe(1);
    works = true;
    await clock.turn(1_500);
    void sound.say("Three.");
    await settle();
    expect([asked, output.told]).toEqual([2, ["speech Three. 0.63"]]);
  });

  it("[S46] one sentence that the voice refuses does not silence the next", async () => {
    const { sound, clock, output } = kitchen({
      fetchSpeech: (text) => Promise.resolve(text === "?" ? err({ kind: "refused", sentence: "no" }) : ok(new TextEncoder().encode(text))),
    });
    const refused = sound.say("?");
    void sound.say("Stir.");
    await clock.turn(2_000);
    expect([await refused, output.told]).toEqual(["shown", ["speech Stir. 0.63"]]);
  });

  it("[S47] before the first tap it says once that the screen must be tapped; after it, it speaks", async () => {
    const { sound, lines, clock, output } = kitchen({ state: "locked" });
    const states: string[] = [];
    sound.onAudioState((state) => states.push(state));
    void sound.say("One.");
    await clock.turn(5_000);
    sound.ring("beans", 0, 1);
    expect(lines().slice(1)).toEqual(["notice: This screen may not make a sound yet; tap it once.", "notice: A timer rings, but this screen may not make a sound yet; tap it once."]);
    expect([await sound.unlock(), states]).toEqual(["ready", ["ready"]]);
    void sound.say("Two.");
    await settle();
    expect(output.told.at(-1)).toBe("speech Two. 0.63");
  });

  it("[S47] a sound that breaks off is replaced by its caption, and the queue goes on", async () => {
    const { sound, output, clock } = kitchen();
    const ends = [sound.say("One."), sound.say("Two.")];
    await settle();
    output.endSpeech("failed");
    await clock.turn(3_000);
    output.endSpeech();
    expect(await Promise.all(ends)).toEqual(["shown", "said"]);
  });
});

describe("rings", () => {
  it("[S48] a ring goes on, louder after 20 and after 40 seconds, until it is stopped", async () => {
    const { sound, output, clock } = kitchen();
    sound.ring("beans", 3, 1, 1_000_250);
    await clock.turn(100_000);
    expect(output.told).toEqual(["ring at 1000250 gain 0.25", "ring gain 0.39", "ring gain 0.63"]);
    sound.stopRing("beans");
    sound.stopRing("beans");
    expect(output.told.at(-1)).toBe("ring stop");
    expect(sound.journal()).toEqual([
      { kind: "rang", text: "beans", chime: 3, round: 1, at: 1_000_000 },
      { kind: "rang", text: "beans", chime: 3, round: 2, at: 1_020_000 },
      { kind: "rang", text: "beans", chime: 3, round: 3, at: 1_040_000 },
      { kind: "ringStopped", text: "beans", at: 1_100_000 },
    ]);
  });

  it("[S48] asked to ring twice it rings once; a later round only makes it louder", () => {
    const { sound, output } = kitchen();
    sound.ring("beans", 3, 1);
    sound.ring("beans", 3, 1);
    sound.ring("beans", 3, 3);
    expect(output.told).toEqual(["ring at 1000000 gain 0.25", "ring gain 0.63"]);
  });

  it("[S49] nothing is put on the audio clock more than a second ahead, and a ring stopped before is never heard", async () => {
    const { sound, output, clock } = kitchen();
    sound.ring("soup", 0, 1, 1_060_000);
    sound.ring("rice", 1, 1, 1_060_000);
    await clock.turn(59_000);
    sound.stopRing("rice");
    expect(output.told).toEqual([]);
    await clock.turn(900);
    expect(output.told).toEqual(["ring at 1060000 gain 0.25"]);
  });

  it("[S50] rings are turned down while speech plays, and share the loudness when there are several", async () => {
    const { sound, output, clock } = kitchen();
    sound.ring("soup", 0, 1);
    expect(output.bus()).toBe(1);
    sound.ring("rice", 1, 1);
    expect(output.bus()).toBeCloseTo(0.66, 2);
    sound.stopRing("rice");
    void sound.say("The soup is done.", { priority: "ring" });
    await settle();
    expect(output.bus()).toBeCloseTo(0.2, 5);
    output.endSpeech();
    await clock.turn(400);
    expect(output.bus()).toBe(1);
    sound.ring("rice", 1, 1);
    sound.stopAllRings();
    expect([sound.ringing(), output.bus()]).toEqual([[], 1]);
  });

  it("[S50] however soft the voice, a ring keeps at least half its loudness", () => {
    const { sound, output } = kitchen();
    for (let i = 0; i < 5; i += 1) sound.softer();
    sound.ring("soup", 0, 3);
    expect(output.told).toEqual(["ring at 1000000 gain 0.50"]);
  });

  it("[S51] signals are heard once sound is allowed, and noted; the journal keeps the last 200 entries", () => {
    const { sound, output } = kitchen({ state: "locked" });
    sound.signal("heard");
    expect(output.told).toEqual([]);
    output.setState("ready");
    for (let i = 0; i < 250; i += 1) sound.signal("listening");
    expect([output.told[0], sound.journal().length, sound.journal()[0]]).toEqual(["tone true 0.63", 200, { kind: "earcon", text: "listening", at: 1_000_000 }]);
  });
});
