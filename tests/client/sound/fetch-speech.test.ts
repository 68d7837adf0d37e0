import { expect, it } from "vitest";
import { httpSpeech } from "../../../client/sound/fetch-speech.ts";

const now = { rate: 1.15, urgency: "now" } as const;

it("[S55] the page asks the server for a sentence with its voice, rate and urgency", async () => {
  const asked: string[] = [];
  const speech = httpSpeech("slt", 1_000, (url, init) => {
    asked.push(
      `${url instanceof Request ? url.url : url.toString()} ${new Headers(init?.headers).get("priority") ?? ""}`,
    );
    return Promise.resolve(new Response(new Uint8Array([1, 2])));
  });
  expect(await speech("Stir & wait?", now)).toEqual({ ok: true, value: new Uint8Array([1, 2]) });
  await speech("Later.", { rate: 1, urgency: "ahead" });
  expect(asked).toEqual([
    "/voice?text=Stir+%26+wait%3F&voice=slt&rate=1.15 u=2",
    "/voice?text=Later.&voice=slt&rate=1 u=6",
  ]);
});

it("[S55] a refusal, a voice in trouble, nonsense and a dead network are told apart", async () => {
  const answer = (response: () => Promise<Response>) => httpSpeech("slt", 1_000, response)("Stir.", now);
  expect(await answer(() => Promise.resolve(Response.json({ error: "Too long." }, { status: 400 })))).toEqual(
    { ok: false, error: { kind: "refused", sentence: "Too long." } },
  );
  expect(await answer(() => Promise.resolve(Response.json({ error: "Busy." }, { status: 503 })))).toEqual({
    ok: false,
    error: { kind: "unreachable", sentence: "Busy." },
  });
  expect(await answer(() => Promise.resolve(new Response("<html>", { status: 502 })))).toEqual({
    ok: false,
    error: { kind: "unreachable", sentence: "The voice answered with the code 502; try again." },
  });
  expect(await answer(() => Promise.reject(new TypeError("failed")))).toEqual({
    ok: false,
    error: {
      kind: "unreachable",
      sentence: "The kitchen's server cannot be reached for the voice; check that it runs.",
    },
  });
});

it("[S55] a server that never answers is given up after the time limit", async () => {
  const silent = httpSpeech(
    "slt",
    50,
    (_url, init) =>
      new Promise((_resolve, reject) => {
        init?.signal?.addEventListener("abort", () => {
          reject(new Error("aborted"));
        });
      }),
  );
  expect((await silent("Stir.", now)).ok).toBe(false);
});
