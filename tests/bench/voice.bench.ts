/**
 * How many kitchen sentences are heard right, by voice, and how much other speech passes for a command.
 * Run: npx tsx tests/bench/voice.bench.ts [--voices rms,slt] [--mode addressed|open] [--every 5] [--verbose]
 */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
type ListeningMode = "addressed" | "open";
import { createFileHearer } from "../../server/hear/hear-file.ts";
import { kitchenGrammar, kitchenSentences } from "../voice/kitchen-grammar.ts";
import { asWav, speechThatIsNoCommand } from "../voice/speech-that-is-no-command.ts";
import { speak, type Voice, voices } from "../voice/synthetic-voices.ts";

const { values } = parseArgs({
  options: {
    voices: { type: "string" },
    mode: { type: "string" },
    every: { type: "string" },
    sentences: { type: "string" },
    verbose: { type: "boolean" },
  },
});
const mode: ListeningMode = values.mode === "open" ? "open" : "addressed";
const address = "okay kitchen";
const chosen = voices.filter((voice) => values.voices?.split(",").includes(voice) ?? true);
const sentences = kitchenSentences.filter((_, at) => at % Number(values.sentences ?? 1) === 0);
const hearer = createFileHearer();
const print = (line: string): void => void process.stdout.write(`${line}\n`);

/** "the" may be said or left out in front of a dish; the command is the same. */
const meaning = (text: string): string => text.replaceAll(/\bthe /g, "");

/** Of the sentences heard right, to set the limits of acceptance by. */
const confidences: number[] = [];

async function hearVoice(voice: Voice): Promise<{ right: number; silent: number }> {
  const said = sentences.map((sentence) => (mode === "addressed" ? `${address}, ${sentence}` : sentence));
  let right = 0;
  let silent = 0;
  for (const [at, path] of (await speak(voice, said)).entries()) {
    const result = await hearer.hearFile(path, { grammar: kitchenGrammar, address, mode });
    if (!result.ok) throw new Error(result.error);
    const { heard, confidence, segments } = result.value;
    const isRight = heard !== null && meaning(heard) === meaning(sentences[at] ?? "");
    if (isRight) right++;
    if (heard === null) silent++;
    if (values.verbose && !isRight) {
      print(
        `  ${voice}: "${sentences[at]}" -> ${heard ?? segments.map(({ verdict }) => (verdict.kind === "none" ? verdict.why : verdict.kind)).join(", ")}`,
      );
    }
    if (isRight && confidence !== null) confidences.push(confidence);
  }
  return { right, silent };
}

let right = 0;
let silent = 0;
for (const voice of chosen) {
  const result = await hearVoice(voice);
  right += result.right;
  silent += result.silent;
  print(`${voice}: ${result.right} of ${sentences.length} right, ${result.silent} not acted on`);
}
const said = chosen.length * sentences.length;
if (said > 0) {
  print(
    `${mode}: ${right} of ${said} right (${((100 * right) / said).toFixed(1)} %), ${silent} not acted on, ${said - right - silent} wrong`,
  );
}

confidences.sort((a, b) => a - b);
const lowest = confidences.slice(0, 8).map((each) => each.toFixed(3));
print(`${mode}: lowest confidences of those heard right: ${lowest.join(" ")}`);

const folder = mkdtempSync(join(tmpdir(), "stovecall-voice-"));
let acted = 0;
let minutes = 0;
const others = speechThatIsNoCommand().filter((_, at) => at % Number(values.every ?? 5) === 0);
for (const path of others) {
  const copy = join(folder, "speech.wav");
  const bytes = asWav(path);
  writeFileSync(copy, bytes);
  const result = await hearer.hearFile(copy, { grammar: kitchenGrammar, address, mode });
  if (!result.ok) {
    print(`  ${path}: ${result.error}`);
    continue;
  }
  minutes += bytes.length / (path.includes("asterisk") ? 16_000 : 32_000) / 60;
  if (result.value.heard === null) continue;
  acted++;
  print(`  acted on ${path}: "${result.value.heard}" (confidence ${result.value.confidence?.toFixed(3)})`);
}
print(
  `${mode}: ${acted} of ${others.length} recordings (${minutes.toFixed(1)} min) that are no command were acted on`,
);
rmSync(folder, { recursive: true, force: true });
hearer.close();
