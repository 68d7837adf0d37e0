import { describe, expect, it } from "vitest";
import type { FetchSpeech } from "../../../client/sound/fetch-speech.ts";
import type { LocalSpeech } from "../../../client/sound/local-speech.ts";
import { err, ok } from "../../../core/units/result.ts";
import { settle } from "./fakes.ts";
import { down, kitchen } from "./kitchen.ts";

describe("saying things", () => {
  it("[S40] everything said is a caption, and goes into the journal once it has been heard", async () => {
    const { sound, output, captions, clock } = kitchen();
    const done = sound.say("Stir the soup.", { priority: "answer" });
    await settle();
    expect(captions).toEqual([
      { id: 1, kind: "speech", text: "Stir the soup.", priority: "answer", at: 1_000_000 },
    ]);
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
    const say = (text: string, priority: "ring" | "answer" | "cue"): void => {
      void sound.say(text, { priority }).then(() => order.push(text));
    };
    say("ring 1", "ring");
    say("cue 1", "cue");
    say("answer 1", "answer");
    say("cue 2", "cue");
    say("ring 2", "ring");
    say("answer 2", "answer");
    for (let i = 0; i < 6; i += 1) {
      await settle();
      output.endSpeech();
    }
    await settle();
    expect(order).toEqual(["ring 1", "ring 2", "answer 1", "answer 2", "cue 1", "cue 2"]);
  });

  it("[S42] a cue cut short by something more urgent is said again from its beginning, before other cues", async () => {
    const { sound, output, captions } = kitchen();
    const cue = sound.say("Turn the flatbreads.");
    void sound.say("Taste the soup.");
    await settle();
    void sound.say("The beans are done.", { priority: "ring" });
    for (let i = 0; i < 3; i += 1) {
      await settle();
      output.endSpeech();
    }
    expect(await cue).toBe("said");
    await settle();
    expect(captions.map(({ id, text }) => `${id} ${text}`)).toEqual([
      "1 Turn the flatbreads.",
      "3 The beans are done.",
      "1 Turn the flatbreads.",
      "2 Taste the soup.",
    ]);
    expect(sound.journal().map(({ kind, text }) => `${kind} ${text}`)).toEqual([
      "cut Turn the flatbreads.",
      "said The beans are done.",
      "said Turn the flatbreads.",
      "said Taste the soup.",
    ]);
  });

  it("[S43] stop talking ends the sentence at once, forgets what waits, and leaves the rings alone", async () => {
    const { sound, output } = kitchen();
    sound.ring("beans", 0, 1);
    const ends = ["One.", "Two."].map((text) => sound.say(text));
    await settle();
    sound.stopTalking();
    expect(await Promise.all(ends)).toEqual(["stopped", "stopped"]);
    expect([
      output.told.includes("stop One."),
      output.told.some((line) => line.includes("Two")),
      sound.ringing(),
    ]).toEqual([true, false, ["beans"]]);
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
    expect([sound.louder(), sound.louder()]).toEqual([
      { value: 1, moved: true },
      { value: 1, moved: false },
    ]);
    for (let i = 0; i < 9; i += 1) {
      sound.softer();
      sound.slower();
    }
    expect([sound.softer(), sound.slower()]).toEqual([
      { value: 0.16, moved: false },
      { value: 0.7, moved: false },
    ]);
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

  it("[S45] another voice says nothing that the one before has left behind, and what is coming is fetched anew", async () => {
    const { sound, output, fetched } = kitchen();
    sound.prefetch(["Stir.", "Turn."]);
    await settle();
    sound.revoice();
    await settle();
    expect(fetched).toEqual(["Stir. 1 ahead", "Turn. 1 ahead", "Stir. 1 ahead", "Turn. 1 ahead"]);
    void sound.say("Stir.");
    await settle();
    expect([output.told, fetched.length]).toEqual([["speech Stir. 0.63"], 4]);
  });

  it("[S45] what was asked of the voice before is not kept for the next one", async () => {
    const answers: (() => void)[] = [];
    const texts: string[] = [];
    const { sound } = kitchen({
      fetchSpeech: (text) => {
        texts.push(text);
        return new Promise((answer) => answers.push(() => answer(ok(new TextEncoder().encode(text)))));
      },
    });
    sound.prefetch(["Stir."]);
    await settle();
    sound.revoice();
    for (const answer of answers.splice(0)) answer();
    await settle();
    void sound.say("Stir.");
    await settle();
    expect(texts).toEqual(["Stir.", "Stir."]);
  });

  it("[S45] a text beyond the server's limit is spoken piece by piece", async () => {
    const { sound, output } = kitchen();
    const end = sound.say(`${"Stir it well now. ".repeat(40)}End.`);
    for (let i = 0; i < 4; i += 1) {
      await settle();
      output.endSpeech();
    }
    expect(await end).toBe("said");
    expect(output.told.length).toBe(2);
    for (const line of output.told) expect(line.length).toBeLessThan(400);
  });
});

describe("without a voice", () => {
  const unreachable: FetchSpeech = () => Promise.resolve(err(down));

  it("[S46] the device's own voice takes over while the server's cannot be reached", async () => {
    const spoken: string[] = [];
    const local: LocalSpeech = {
      available: () => true,
      speak: (text, _options, onStart) => {
        spoken.push(text);
        onStart();
        return { ended: Promise.resolve("ended"), stop: () => undefined };
      },
    };
    const { sound, lines, edges } = kitchen({ fetchSpeech: unreachable, local });
    expect(await sound.say("Stir.")).toBe("said");
    expect([spoken, lines(), edges]).toEqual([["Stir."], ["speech: Stir."], ["start 0"]]);
  });

  it("[S46] with no voice at all the captions stand long enough to be read, and one sentence says so once", async () => {
    const { sound, lines, clock, edges } = kitchen({ fetchSpeech: unreachable });
    const ends = [sound.say("Stir."), sound.say("Taste.")];
    await clock.turn(1_000);
    expect(lines()).toEqual([
      "speech: Stir.",
      "notice: The voice cannot be reached and this device has none of its own; read here what I would say.",
    ]);
    await clock.turn(5_000);
    expect(await Promise.all(ends)).toEqual(["shown", "shown"]);
    expect([lines().at(-1), lines().length, edges]).toEqual(["speech: Taste.", 3, []]);
  });

  it("[S46] after a failure the server is left alone for five seconds, then asked again", async () => {
    let [asked, works] = [0, false];
    const { sound, clock, output } = kitchen({
      fetchSpeech: (text) => {
        asked += 1;
        return Promise.resolve(works ? ok(new TextEncoder().encode(text)) : err(down));
      },
    });
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
      fetchSpeech: (text) =>
        Promise.resolve(
          text === "?" ? err({ kind: "refused", sentence: "no" }) : ok(new TextEncoder().encode(text)),
        ),
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
    expect(lines().slice(1)).toEqual([
      "notice: This screen may not make a sound yet; tap it once.",
      "notice: A timer rings, but this screen may not make a sound yet; tap it once.",
    ]);
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
