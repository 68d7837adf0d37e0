import type { ListeningMode } from "../../../core/speech/recogniser.ts";
import { listeningRate } from "../../../core/speech/samples.ts";
import type { Verdict } from "../../../core/speech/verdict.ts";
import { respondUnsure } from "../../../core/talk/respond-unsure.ts";
import type { Kitchen } from "../../../core/talk/model.ts";
import { judgeHeard } from "../../voice/judge-heard.ts";
import { otherSpeech } from "../../voice/other-speech.ts";
import { allSpeakers, type Speaker } from "../../voice/speakers.ts";
import { timed } from "../figures.ts";
import { type Condition, heardIn, samplesOf } from "./conditions.ts";
import type { OpenEar } from "./ears.ts";
import type { Asked } from "./sentences.ts";

/**
 * What a sentence came to. "asked" is a question back that has what was said among its answers; "beside" is an answer
 * or a question beside the point, by which nothing is done; "wrong" is an order that was not given.
 */
export type TrialOutcome = "right" | "asked" | "silent" | "beside" | "wrong";

/** All of them, the best first. */
export const outcomes: readonly TrialOutcome[] = ["right", "asked", "silent", "beside", "wrong"];

/** What became of one sentence by one voice in one condition. */
export type Trial = {
  readonly ear: string;
  readonly condition: string;
  readonly group: string;
  readonly speaker: string;
  readonly sentence: string;
  readonly heard: string;
  readonly outcome: TrialOutcome;
  readonly isExact: boolean;
  readonly cpuMs: number;
  readonly soundS: number;
};

/** Other talk that passed for a command. */
export type FalseCommand = { readonly text: string; readonly speaker: string; readonly heard: string };

export const address = "listen kitchen";

/**
 * Says sentences to an ear: every `every`th by each voice in turn, so that all voices and all sentences have their part.
 * @param offset another one takes other sentences
 */
export async function sayTo(
  name: string,
  ear: OpenEar,
  condition: Condition,
  sentences: readonly Asked[],
  {
    every,
    offset,
    speakers,
  }: { readonly every: number; readonly offset: number; readonly speakers: readonly Speaker[] },
): Promise<readonly Trial[]> {
  const trials: Trial[] = [];
  for (const [turn, asked] of sentences.entries()) {
    if ((turn + offset) % every !== 0) continue;
    const speaker = speakers[Math.floor(turn / every) % speakers.length];
    if (speaker === undefined) throw new Error("Nobody is there to speak: give voices.");
    const [path = ""] = await speaker.speak([`${address}, ${asked.sentence}`]);
    const sound = heardIn(condition, samplesOf(path), turn, await talkersFor(turn, speaker));
    await ear.listenFor({ grammar: asked.grammar, address, mode: "addressed", stopSentences: [] });
    const { ms, value } = await timed(() => ear.hear(sound));
    const verdict = value.find(({ kind }) => kind === "command") ?? null;
    const words = verdict?.kind === "command" ? verdict.words.join(" ") : null;
    trials.push({
      ear: name,
      condition: condition.name,
      group: asked.group,
      speaker: speaker.name,
      sentence: asked.sentence,
      heard: words ?? value.map((each) => (each.kind === "none" ? each.why : each.kind)).join(", "),
      outcome: outcomeOf(asked.sentence, verdict, asked.kitchen),
      isExact: words === asked.sentence,
      cpuMs: ms,
      soundS: sound.length / listeningRate,
    });
  }
  return trials;
}

function outcomeOf(sentence: string, verdict: Verdict | null, kitchen: Kitchen): TrialOutcome {
  if (verdict?.kind !== "command") return "silent";
  const isRight = (words: readonly string[]): boolean =>
    judgeHeard(sentence, words.join(" "), kitchen) === "right";
  const readings = [verdict.words, ...verdict.rivals];
  const reply = respondUnsure(readings, kitchen);
  const isDone = reply.orders.length > 0 || reply.voice.length > 0;
  if (reply.intent === null) return readings.some(isRight) ? "asked" : "beside";
  return isRight(verdict.words) ? "right" : isDone ? "wrong" : "beside";
}

/** Two other voices that say other things to the kitchen, for a room in which several talk. */
async function talkersFor(turn: number, speaker: Speaker): Promise<readonly Float32Array[]> {
  const others = allSpeakers.filter(({ name }) => !name.startsWith(speaker.name.split(" ")[0] ?? ""));
  const said = [
    "the ferry was late again and nobody had told the harbour",
    "put it down by the window, would you",
  ];
  const paths = await Promise.all(
    said.map(async (text, at) => (await others[(turn + 3 * at) % others.length]?.speak([text])) ?? []),
  );
  return paths.flat().map(samplesOf);
}

/** Lets an ear overhear so many seconds of other talk. */
export async function letOverhear(
  ear: OpenEar,
  asked: Asked,
  mode: ListeningMode,
  { seed, seconds }: { readonly seed: number; readonly seconds: number },
): Promise<{ readonly heardS: number; readonly cpuMs: number; readonly obeyed: readonly FalseCommand[] }> {
  await ear.listenFor({ grammar: asked.grammar, address, mode, stopSentences: [] });
  const obeyed: FalseCommand[] = [];
  let [heardS, cpuMs] = [0, 0];
  for await (const { text, speaker, samples16k } of otherSpeech({ seed, seconds })) {
    const { ms, value } = await timed(() => ear.hear(samples16k));
    heardS += samples16k.length / listeningRate;
    cpuMs += ms;
    for (const verdict of value)
      if (verdict.kind === "command") obeyed.push({ text, speaker, heard: verdict.words.join(" ") });
  }
  return { heardS, cpuMs, obeyed };
}
