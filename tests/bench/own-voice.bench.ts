/**
 * Whether the caller ever obeys itself: its own sentences, by its own voices, played into its ear, as they are and
 * through a room, while it speaks and in the moment after.
 * Run: tsx tests/bench/own-voice.bench.ts [--seconds 1800] [--seed 5]
 */
import { parseArgs } from "node:util";
import { openNodeHearing } from "../../server/hear/node-hearing.ts";
import { createVoice } from "../../server/voice/create-voice.ts";
import { voiceNames } from "../../server/voice/speech-request.ts";
import { callersSentences, overhearOneself } from "../voice/own-voice.ts";
import { print, printFigure, printMachine } from "./figures.ts";

const { values } = parseArgs({
  options: { seconds: { type: "string", default: "1800" }, seed: { type: "string", default: "5" } },
});

const opened = await openNodeHearing();
if (!opened.ok) throw new Error(opened.error);
const { hearing, free } = opened.value;
const sentences = await callersSentences();
const voice = createVoice();
printMachine();
print(`${sentences.length} sentences, ${voiceNames.length} voices`);
for (const place of ["clean", "room"] as const) {
  const parts = [];
  for (const [at, name] of voiceNames.entries()) {
    const how = {
      place,
      seed: Number(values.seed) + at,
      seconds: Number(values.seconds) / voiceNames.length,
    };
    parts.push(await overhearOneself(hearing, sentences, { by: voice, name }, how));
  }
  const spokenS = parts.reduce((sum, part) => sum + part.spokenS, 0);
  const obeyed = parts.flatMap((part) => part.obeyed);
  printFigure(
    `its own voice, ${place}`,
    `obeyed ${obeyed.length} times in ${(spokenS / 60).toFixed(1)} min`,
    "0 in 30 min",
    obeyed.length === 0,
  );
  for (const one of obeyed) print(`      ${one}`);
}
await voice.close();
free();
