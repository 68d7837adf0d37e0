import { beforeEach, describe, expect, it } from "vitest";
import { createRoomSign, tooLoudSentence } from "../../../client/kitchen/room-sign.ts";

describe("the sign of a loud room", () => {
  let said: string[];
  let isRinging: boolean;
  let sign: ReturnType<typeof createRoomSign>;
  const hear = (seconds: number, floorDb: number): void => {
    for (let second = 0; second < seconds; second++) sign.take({ floorDb, speechDb: -25 });
  };
  beforeEach(() => {
    said = [];
    isRinging = false;
    sign = createRoomSign(
      (sentence) => said.push(sentence),
      () => !isRinging,
    );
  });

  it("[W32] it shows after three seconds, and is said once, when it has lasted for twenty", () => {
    hear(3, -20);
    expect(sign.noise.value).toBe("too-loud");
    hear(18, -20);
    expect(said).toEqual([]);
    hear(1, -20);
    expect(said).toEqual([tooLoudSentence]);
    hear(600, -20);
    expect(said).toHaveLength(1);
  });

  it("[W32] the next spell is said again, if it lasts; short ones never are", () => {
    hear(25, -20);
    hear(5, -60);
    expect(sign.noise.value).toBe("quiet");
    for (let spell = 0; spell < 5; spell++) {
      hear(15, -20);
      hear(5, -60);
    }
    expect(said).toHaveLength(1);
    hear(25, -20);
    expect(said).toHaveLength(2);
  });

  it("[W32] it is not said into a ring, but after it where the noise goes on", () => {
    isRinging = true;
    hear(60, -20);
    expect(said).toEqual([]);
    isRinging = false;
    hear(1, -20);
    expect(said).toEqual([tooLoudSentence]);
  });

  it("[W32] an ear that is closed knows no noise", () => {
    hear(15, -20);
    sign.forget();
    expect(sign.noise.value).toBe("quiet");
    hear(15, -20);
    expect(said).toEqual([]);
  });
});
