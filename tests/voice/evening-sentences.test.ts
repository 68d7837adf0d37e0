import { expect, it } from "vitest";
import { allSentences } from "../bench/voice/sentences.ts";

it("[V150] what the voice benches say can be heard at its moment, is understood, and wants all that can be wanted", async () => {
  expect((await allSentences()).length).toBeGreaterThanOrEqual(150);
});
