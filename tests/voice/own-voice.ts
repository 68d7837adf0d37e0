import { tailMs } from "../../client/sound/settings.ts";
import type { Grammar } from "../../core/speech/grammar.ts";
import type { Hearing } from "../../core/speech/hearing.ts";
import type { ListenFor } from "../../core/speech/recogniser.ts";
import { resample } from "../../core/speech/resample.ts";
import { joinSamples, listeningRate } from "../../core/speech/samples.ts";
import { parseWav } from "../../core/speech/wav.ts";
import { grammarFor } from "../../core/talk/grammar-for.ts";
import { heardWhileSaying } from "../../core/talk/heard-while-saying.ts";
import { respond } from "../../core/talk/respond.ts";
import { hours, plus } from "../../core/units/quantity.ts";
import { findMeal } from "../../server/cli/find-meal.ts";
import { atMinute } from "../../server/rehearsal/clock-time.ts";
import { cookOn } from "../../server/rehearsal/obliging-cook.ts";
import { Stage } from "../../server/rehearsal/stage.ts";
import type { Voice } from "../../server/voice/create-voice.ts";
import type { VoiceName } from "../../server/voice/speech-request.ts";
import { eveningMoments } from "./evening-moments.ts";
import { eveningSentences } from "./evening-sentences.ts";
import { makeNoise } from "./noises.ts";
import { inRoom, roomResponse } from "./rooms.ts";
import { createChance } from "./seeded.ts";

/** What the caller may say, and what is listened for at that moment. */
export type CallersSentence = { readonly text: string; readonly grammar: Grammar };

/** All that the caller says in three whole meals, and its answers to the sentences of the evening; each text once. */
export async function callersSentences(): Promise<readonly CallersSentence[]> {
  const moments = await eveningMoments();
  const grammar = grammarFor(moments.busy);
  const cues = (
    await Promise.all(["welcome-supper", "fog-bell-breakfast", "slack-water-lunch"].map(saidAt))
  ).flat();
  const answers = eveningSentences.flatMap(({ moment, sentences }) =>
    sentences.map((sentence) => respond(sentence, moments[moment]).say),
  );
  const texts = [...new Set([...cues, ...answers])].filter((text) => text !== "");
  return texts.map((text) => ({ text, grammar }));
}

/** The caller's lines in a meal cooked from beginning to end. */
async function saidAt(meal: string): Promise<readonly string[]> {
  const found = await findMeal(meal);
  if (!found.ok) throw new Error(found.error);
  const lines: string[] = [];
  const stage = new Stage(found.value.meal, atMinute(17 * 60), null, (turn) => {
    if (turn.who === "caller") lines.push(turn.said);
  });
  cookOn(stage, () => false, plus(stage.now, hours(4)));
  return lines;
}

/** Where the loudspeaker stands: its sound comes into the microphone as it is, or from across a room. */
export type Place = "clean" | "room";

/** One of its voices. */
export type CallersVoice = { readonly by: Voice; readonly name: VoiceName };

/** What became of sentences of its own. */
export type Overheard = { readonly spokenS: number; readonly obeyed: readonly string[] };

/** Between two sentences; a window without the address is open then. */
const betweenS = 1.2;

/** A microphone on a device hears its own loudspeaker as loud as this, in parts of full scale (about -20 dBFS). */
const echoPeak = 0.4;

/**
 * Lets an ear hear the caller itself, as the page does: while it speaks only a few sentences count without the address,
 * and in the moment after, any.
 * @param seconds how much of its speech at least; its sentences come in an order of their own, from the start again
 */
export async function overhearOneself(
  hearing: Hearing,
  sentences: readonly CallersSentence[],
  voice: CallersVoice,
  { place, seed, seconds }: { readonly place: Place; readonly seed: number; readonly seconds: number },
): Promise<Overheard> {
  const chance = createChance(seed);
  const order = [...sentences]
    .map((each) => ({ each, at: chance.between(0, 1) }))
    .sort((a, b) => a.at - b.at);
  const address = "listen kitchen";
  const obeyed: string[] = [];
  let spokenS = 0;
  await hearing.reset();
  for (let turn = 0; spokenS < seconds; turn++) {
    const one = order[turn % order.length]?.each;
    if (one === undefined) throw new Error("The caller has nothing to say.");
    const sound = atMicrophone(await spoken(one.text, voice), place, seed + turn);
    const listen = (how: Partial<ListenFor>): ListenFor => ({
      grammar: one.grammar,
      address,
      mode: "open",
      stopSentences: [],
      ...how,
    });
    await hearing.listenFor(listen({ mode: "stop-only", ...heardWhileSaying(one.text, address) }), {
      keepMs: 15_000,
    });
    const events = [...(await hearing.accept(sound.subarray(0, -tailSamples)))];
    await hearing.listenFor(listen({}), { keepMs: tailMs });
    events.push(...(await hearing.accept(sound.subarray(-tailSamples))));
    for (const event of events)
      if (event.kind === "heard" && event.verdict.kind !== "none")
        obeyed.push(
          `"${one.text}" -> ${event.verdict.kind === "command" ? event.verdict.words.join(" ") : "called"}`,
        );
    spokenS += (sound.length - tailSamples) / listeningRate;
  }
  return { spokenS, obeyed };
}

/** What is left of the pause when the page takes its own voice for over. */
const tailSamples = (betweenS - tailMs / 1000) * listeningRate;

async function spoken(text: string, voice: CallersVoice): Promise<Float32Array> {
  const file = await voice.by.speak(text, { voice: voice.name, rate: 1 });
  if (!file.ok) throw new Error(`"${text}": ${file.error}`);
  const wav = parseWav(file.value);
  if (!wav.ok) throw new Error(wav.error);
  return resample(wav.value.samples, wav.value.rate, listeningRate);
}

/** With a faint hiss of the room under it, and the pause after it. */
function atMicrophone(speech: Float32Array, place: Place, seed: number): Float32Array {
  const there = place === "clean" ? speech : inRoom(speech, roomResponse({ rt60S: 0.4, metres: 1.5, seed }));
  const sound = joinSamples([
    there,
    new Float32Array(Math.max(0, Math.round(betweenS * listeningRate) - (there.length - speech.length))),
  ]);
  const peak = sound.reduce((most, sample) => Math.max(most, Math.abs(sample)), 1e-6);
  const hiss = makeNoise("extractor fan", Math.max(1, sound.length / listeningRate), seed);
  return sound.map((sample, at) => (sample * echoPeak) / peak + 0.02 * (hiss[at] ?? 0));
}
