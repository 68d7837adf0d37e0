import { describe, expect, it } from "vitest";
import { settle } from "./fakes.ts";
import { kitchen } from "./kitchen.ts";

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
    expect([output.told[0], sound.journal().length, sound.journal()[0]]).toEqual([
      "tone true 0.63",
      200,
      { kind: "earcon", text: "listening", at: 1_000_000 },
    ]);
  });
});
