import { existsSync, readFileSync } from "node:fs";
import { basename } from "node:path";
import { gunzipSync } from "node:zlib";
import { speechThatIsNoCommand } from "./speech-that-is-no-command.ts";

/** A recording of a person, and what is said in it. */
export type Recorded = { readonly path: string; readonly text: string };

const promptList = "/usr/share/doc/asterisk-core-sounds-en/core-sounds-en.txt.gz";
const readings = ["cards/cards.transcription", "librivox/transcription"].map(
  (name) => `/usr/share/pocketsphinx/test/data/${name}`,
);

/**
 * Debian's recordings with their words, as the packages give them; where they give none the file's name stands in, in
 * square brackets. Silence is no speech and is left out.
 */
export function recordedSpeech(): readonly Recorded[] {
  const texts = new Map([...promptTexts(), ...readTexts()]);
  return speechThatIsNoCommand()
    .filter((path) => !path.includes("/silence/"))
    .map((path) => {
      const name = basename(path).replace(/\.\w+$/, "");
      const inFolder = path
        .split("/")
        .slice(-2)
        .join("/")
        .replace(/\.\w+$/, "");
      return { path, text: texts.get(inFolder) ?? texts.get(name) ?? `[${name}]` };
    });
}

/** Lines "name: what is said". */
function promptTexts(): readonly (readonly [string, string])[] {
  if (!existsSync(promptList)) return [];
  return gunzipSync(readFileSync(promptList))
    .toString("utf8")
    .split("\n")
    .flatMap((line) => {
      const [, name, text] = /^([\w/-]+):\s*(\S.*)$/.exec(line) ?? [];
      return name === undefined || text === undefined ? [] : [[name, text] as const];
    });
}

/** Lines "<s> what is said </s> (name)". */
function readTexts(): readonly (readonly [string, string])[] {
  return readings.filter(existsSync).flatMap((path) =>
    readFileSync(path, "utf8")
      .split("\n")
      .flatMap((line) => {
        const [, text, name] = /^<s>\s*(.*?)\s*<\/s>\s*\((.+)\)/.exec(line) ?? [];
        return name === undefined || text === undefined ? [] : [[name, text] as const];
      }),
  );
}
