import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { createFileHearer } from "../../server/hear/hear-file.ts";
import { kitchenGrammar } from "./kitchen-grammar.ts";
import { asWav, speechThatIsNoCommand } from "./speech-that-is-no-command.ts";
import { speak } from "./synthetic-voices.ts";

const addressed = { grammar: kitchenGrammar, address: "listen kitchen", mode: "addressed" } as const;
const hearer = createFileHearer();
const folder = mkdtempSync(join(tmpdir(), "stovecall-hear-"));

const hear = async (path: string, options: Parameters<typeof hearer.hearFile>[1] = addressed) => {
  const result = await hearer.hearFile(path, options);
  return result.ok ? result.value.heard : result.error;
};

/** Two recordings at 16 kHz and 16 bits over one another, equally loud. */
function mixed(one: string, other: string): string {
  const bytes = Buffer.from(asWav(one));
  const more = Buffer.from(asWav(other));
  for (let at = 44; at + 1 < bytes.length; at += 2) {
    const second = at + 1 < more.length ? more.readInt16LE(at) : 0;
    bytes.writeInt16LE(Math.trunc((bytes.readInt16LE(at) + second) / 2), at);
  }
  const path = join(folder, "mixed.wav");
  writeFileSync(path, bytes);
  return path;
}

afterAll(() => {
  hearer.close();
  rmSync(folder, { recursive: true, force: true });
});

describe("hearing a file", () => {
  it.each([
    "next step",
    "set a timer for twelve minutes",
    "how much flour in the flatbreads",
    "what is in the oven",
  ])("[V16] two voices that say %j after the address are heard, the address dropped", async (sentence) => {
    for (const voice of ["slt", "rms"] as const) {
      const [path = ""] = await speak(voice, [`listen kitchen, ${sentence}`]);
      expect(await hear(path)).toBe(sentence);
    }
  });

  it("[V2] the same sentence without the address is not acted on", async () => {
    const [path = ""] = await speak("slt", ["next step"]);
    expect(await hear(path)).toBeNull();
  });

  it("[V13] and is heard in an open window", async () => {
    const [path = ""] = await speak("slt", ["how much flour in the flatbreads"]);
    expect(await hear(path, { ...addressed, mode: "open" })).toBe("how much flour in the flatbreads");
  });

  it("[V23] two people who talk at once are heard right or not at all, never as something else", async () => {
    const other = "we drove along the river until the bridge was closed, and then it rained for an hour";
    const commands = ["set a timer for twelve minutes", "what is in the oven", "next step"];
    for (const [cook, guest] of [
      ["slt", "rms"],
      ["rms", "awb"],
    ] as const) {
      const [chat = ""] = await speak(guest, [other]);
      for (const command of commands) {
        const [path = ""] = await speak(cook, [`listen kitchen, ${command}`]);
        expect([null, command]).toContain(await hear(mixed(path, chat)));
      }
    }
  });

  it("[V12] a second's pause after the address is allowed", async () => {
    const [address = "", command = ""] = await speak("slt", [
      "listen kitchen",
      "set a timer for twelve minutes",
    ]);
    const joined = Buffer.concat([
      asWav(address),
      Buffer.alloc(32_000),
      Buffer.from(asWav(command)).subarray(44),
    ]);
    joined.writeUInt32LE(joined.length - 44, 40);
    joined.writeUInt32LE(joined.length - 8, 4);
    const path = join(folder, "pause.wav");
    writeFileSync(path, joined);
    const result = await hearer.hearFile(path, addressed);
    expect(result.ok && result.value.segments.map(({ verdict }) => verdict.kind)).toEqual([
      "address-only",
      "command",
    ]);
    expect(result.ok && result.value.heard).toBe("set a timer for twelve minutes");
  });

  // Source: Debian's pocketsphinx-testdata: novels read aloud, digits, and phrases, by people.
  it("[V3] real speech that is no command is never acted on", async () => {
    const others = speechThatIsNoCommand().filter((path) => path.includes("pocketsphinx"));
    expect(others.length).toBeGreaterThan(10);
    const acted: string[] = [];
    for (const original of others) {
      const path = join(folder, "speech.wav");
      writeFileSync(path, asWav(original));
      const heard = await hear(path);
      if (heard !== null) acted.push(`${original}: ${heard}`);
    }
    expect(acted).toEqual([]);
  }, 120_000);

  it("[V9] a missing file and a file that is no WAV are one sentence that names it", async () => {
    const path = join(folder, "notes.wav");
    writeFileSync(path, "flour, water, salt");
    expect(await hear(path)).toBe(
      `${path}: This is not a WAV file: it does not begin with RIFF and WAVE. Give a WAV recording.`,
    );
    expect(await hear(join(folder, "none.wav"))).toBe(
      `The file ${join(folder, "none.wav")} cannot be read. Check its name and that you may read it.`,
    );
  });

  it("[V1] a grammar that cannot be read is one sentence", async () => {
    const [path = ""] = await speak("slt", ["next step"]);
    expect(await hear(path, { ...addressed, grammar: { root: "gone", rules: new Map() } })).toBe(
      'The grammar has no rule "gone". Add it, or correct the name.',
    );
  });
});
