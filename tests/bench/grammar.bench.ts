/**
 * How long it takes until something else is listened for, at moments of three meals and at one with several hundred more
 * foods: the grammar of a moment and its automaton out of nothing; then, as page and worker do it between them, when
 * one more timer runs, whose name was never heard before, and when only the mode is another. And what the light ear
 * takes on top.
 * Run: npx tsx tests/bench/grammar.bench.ts
 */
import { automatonFrom } from "../../core/speech/automaton.ts";
import type { Grammar } from "../../core/speech/grammar.ts";
import { changedBy, changeOf, keepingRules } from "../../core/speech/grammar-change.ts";
import { Languages } from "../../core/speech/languages.ts";
import type { ListenFor } from "../../core/speech/recogniser.ts";
import { createSpeller } from "../../core/speech/transcribe/speller.ts";
import { WordPaths } from "../../core/speech/transcribe/word-paths.ts";
import { grammarFor } from "../../core/talk/grammar-for.ts";
import type { Kitchen } from "../../core/talk/model.ts";
import { timerId } from "../../core/cook/orders.ts";
import { ingredientId } from "../../core/recipe/model.ts";
import { transcriberTokens } from "../../server/hear/network-files.ts";
import { createNodeEngine } from "../../server/hear/node-recogniser.ts";
import { eveningMoments } from "../voice/evening-moments.ts";
import { median, print, printFigure, printMachine, timed } from "./figures.ts";

/** A grammar is made anew within this. */
const mostMs = 100;
const runs = 9;

const kinds = ["smoked", "dried", "ground", "pickled", "black", "white", "sour", "sweet", "wild", "salted"];
const foods =
  "cherry barley fennel lovage buckwheat quince sorrel medlar chervil damson rye samphire nettle gooseberry spelt " +
  "celeriac burdock salsify millet mallow borage marrow turnip cress hyssop juniper caraway plantain tamarind cassava";

/** The same evening, its first dish made of three hundred things more. */
function withManyFoods(kitchen: Kitchen): Kitchen {
  const { session } = kitchen.log;
  const [first, ...others] = session?.meal.dishes ?? [];
  const [pattern] = first?.ingredients ?? [];
  if (session === null || first === undefined || pattern === undefined)
    throw new Error("The evening has no dish with an ingredient.");
  const more = foods
    .split(" ")
    .flatMap((food) => kinds.map((kind) => `${kind} ${food}`))
    .map((item) => ({ ...pattern, item, id: ingredientId(item.replace(" ", "-")) }));
  const dishes = [{ ...first, ingredients: [...first.ingredients, ...more] }, ...others];
  return { ...kitchen, log: { ...kitchen.log, session: { ...session, meal: { ...session.meal, dishes } } } };
}

/** The same evening with one timer more. */
function withTimer(kitchen: Kitchen, name: string): Kitchen {
  const { session } = kitchen.log;
  const [pattern] = session?.timers.values() ?? [];
  if (session === null || pattern === undefined) throw new Error("The evening has no timer.");
  const timers = new Map([...session.timers, [timerId(name), { ...pattern, name }]]);
  return { ...kitchen, log: { ...kitchen.log, session: { ...session, timers } } };
}

const speller = createSpeller(await transcriberTokens());
const light = createNodeEngine();
await light.load();

const listening = (grammar: Grammar, mode: "addressed" | "open"): ListenFor => ({
  grammar,
  address: "listen kitchen",
  mode,
  stopSentences: [],
});

/** Until words can be followed. @returns how many states they may lead through */
function laidOut(languages: Languages, what: ListenFor): number {
  const automaton = automatonFrom(languages, what);
  if (!automaton.ok) throw new Error(automaton.error);
  new WordPaths(automaton.value, speller).start();
  return automaton.value.states.length;
}

async function measureFirst(name: string, kitchen: Kitchen): Promise<void> {
  const [made, woven]: [number[], number[]] = [[], []];
  let states = 0;
  for (let run = 0; run < runs; run++) {
    const grammar = await timed(() => grammarFor(kitchen));
    const automaton = await timed(() => laidOut(new Languages(), listening(grammar.value, "addressed")));
    states = automaton.value;
    made.push(grammar.ms);
    woven.push(automaton.ms);
  }
  const all = median(made) + median(woven);
  printFigure(
    `${name}, out of nothing: ${states} states`,
    `${all.toFixed(1)} ms`,
    `${mostMs} ms`,
    all <= mostMs,
  );
  print(
    `      grammar ${median(made).toFixed(1)}, automaton and its beginning ${median(woven).toFixed(1)} ms`,
  );
}

/** What each part of a change takes, in ms. */
type Change = {
  /** The page finds out what can be said now. */
  readonly found: number;
  /** What is new is written and read again, as a message is. */
  readonly posted: number;
  /** The worker puts it together and draws the automaton. */
  readonly woven: number;
  /** Then the mode changes and nothing else. */
  readonly turned: number;
  readonly laidByLight: number;
};

async function measureChange(kitchen: Kitchen): Promise<void> {
  const languages = new Languages();
  let mine = grammarFor(kitchen);
  let theirs = mine;
  laidOut(languages, listening(theirs, "addressed"));
  const changes: Change[] = [];
  for (const name of foods.split(" ").slice(0, runs)) {
    const moment = withTimer(kitchen, name);
    const found = await timed(() => keepingRules(mine, grammarFor(moment)));
    const posted = await timed(() => structuredClone(changeOf(mine, found.value)));
    const woven = await timed(() => {
      const grammar = changedBy(theirs, posted.value);
      laidOut(languages, listening(grammar, "addressed"));
      return grammar;
    });
    mine = found.value;
    theirs = woven.value;
    const turned = await timed(() => laidOut(languages, listening(theirs, "open")));
    const { ms: laidByLight } = await timed(() => light.setGrammar(listening(theirs, "addressed")));
    changes.push({ found: found.ms, posted: posted.ms, woven: woven.ms, turned: turned.ms, laidByLight });
  }
  const middle = (part: keyof Change): number => median(changes.map((change) => change[part]));
  const all = middle("found") + middle("posted") + middle("woven");
  printFigure("  one more timer", `${all.toFixed(1)} ms`, `${mostMs} ms`, all <= mostMs);
  print(
    `      page ${middle("found").toFixed(1)}, message ${middle("posted").toFixed(1)}, ` +
      `worker ${middle("woven").toFixed(1)}; another mode ${middle("turned").toFixed(1)} ms; ` +
      `the light ear ${middle("laidByLight").toFixed(0)} ms on top`,
  );
}

async function measure(name: string, kitchen: Kitchen): Promise<void> {
  await measureFirst(name, kitchen);
  await measureChange(kitchen);
}

printMachine();
const moments = await eveningMoments();
for (const name of ["busy", "which", "breakfast", "lunch"] as const) await measure(name, moments[name]);
await measure("busy, 300 foods more", withManyFoods(moments.busy));
light.free();
