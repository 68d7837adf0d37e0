import type { AddressInfo } from "node:net";
import { get, type Server } from "node:http";
import express from "express";
import { afterAll, beforeAll, expect, it } from "vitest";
import { createVoice, type SpeakOptions, type Voice } from "../../server/voice/create-voice.ts";
import { voiceRouter } from "../../server/voice/voice-router.ts";

const voice = createVoice();
const asked: SpeakOptions[] = [];
const watched: Voice = {
  warm: () => {
    voice.warm();
  },
  close: () => voice.close(),
  speak: (text, options) => {
    asked.push(options);
    return voice.speak(text, options);
  },
};
let server: Server;
let base = "";

beforeAll(async () => {
  await new Promise<void>((resolve) => {
    server = express()
      .use(voiceRouter(watched))
      .listen(0, "127.0.0.1", () => {
        resolve();
      });
  });
  base = `http://127.0.0.1:${(server.address() as AddressInfo).port}/voice`;
});
afterAll(async () => {
  await voice.close();
  await new Promise((resolve) => server.close(resolve));
});

/** Asked with node:http, for fetch() adds "no-cache" to a conditional request, which rightly gets the whole sound. */
function statusWith(url: string, etag: string): Promise<number | undefined> {
  return new Promise((resolve, reject) => {
    get(url, { headers: { "If-None-Match": etag } }, (response) => {
      response.resume();
      resolve(response.statusCode);
    }).on("error", reject);
  });
}

it("[S31] a sentence is served as audio that the browser may keep for good", async () => {
  const response = await fetch(
    `${base}?${new URLSearchParams({ text: "Turn the flatbreads now.", voice: "kal16", rate: "1.25" }).toString()}`,
  );
  expect(response.status).toBe(200);
  expect(response.headers.get("content-type")).toBe("audio/wav");
  expect(response.headers.get("cache-control")).toBe("private, max-age=31536000, immutable");
  const bytes = new Uint8Array(await response.arrayBuffer());
  expect(new TextDecoder().decode(bytes.subarray(0, 4))).toBe("RIFF");
  expect(await statusWith(response.url, response.headers.get("etag") ?? "")).toBe(304);
  expect(await statusWith(response.url, '"another"')).toBe(200);
});

it("[S31] the voice is slt at its own pace unless asked otherwise", async () => {
  await (await fetch(`${base}?text=Stir.`)).arrayBuffer();
  expect(asked.at(-1)).toEqual({ voice: "slt", rate: 1, urgency: "now" });
});

it("[S29] a request of low priority is work for later", async () => {
  await (await fetch(`${base}?text=Stir.`, { headers: { Priority: "u=6, i" } })).arrayBuffer();
  expect(asked.at(-1)?.urgency).toBe("ahead");
});

it.each(
  [
    ["", "The request has no text; add ?text= and what is to be said."],
    ["?text=", "There is nothing to say in the text; give at least one word."],
    ["?text=a&text=b", "The request has no text; add ?text= and what is to be said."],
    ["?text=a&voice=../x", "There is no such voice; choose one of slt, kal16, rms, awb, kal."],
    ["?text=a&rate=9", "The rate is too large; the fastest is 2."],
    ["?text=a&rate=fast", "The rate is not a number; 1 is the voice's own pace."],
    ["?text=a%00b", "The text holds control characters, which cannot be spoken; remove them."],
    ["?text=a&shout=1", "The request has a field that the voice does not know: shout; leave it out."],
    [
      `?text=${"x".repeat(10_000)}`,
      "The text has 10000 characters, but at most 400 can be spoken at once; split it.",
    ],
  ].map(([query = "", sentence = ""]) => ({ query, sentence })),
)("[S31] a request that cannot be spoken is refused: $sentence", async ({ query, sentence }) => {
  const response = await fetch(base + query);
  expect([response.status, response.headers.get("cache-control"), await response.json()]).toEqual([
    400,
    "no-store",
    { error: sentence },
  ]);
});

it("[S31] a voice in trouble answers 503, which may be tried again", async () => {
  const closed = createVoice();
  await closed.close();
  const other = await new Promise<Server>((resolve) => {
    const listening = express()
      .use(voiceRouter(closed))
      .listen(0, "127.0.0.1", () => {
        resolve(listening);
      });
  });
  const response = await fetch(`http://127.0.0.1:${(other.address() as AddressInfo).port}/voice?text=Stir.`);
  expect([response.status, await response.json()]).toEqual([
    503,
    { error: "The voice is switched off because the server is stopping; read the captions on the screen." },
  ]);
  await new Promise((resolve) => other.close(resolve));
});
