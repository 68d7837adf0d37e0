/**
 * How long it takes until something else is listened for: the grammar of a moment and its automaton, both made anew,
 * at moments of three meals and at one with several hundred more foods; and what the light ear takes on top.
 * Run: npx tsx tests/bench/grammar.bench.ts
 */
import { toAutomaton } from "../../core/speech/automaton.ts";
import type { Grammar } from "../../core/speech/grammar.ts";
import { createSpeller } from "../../core/speech/transcribe/speller.ts";
import { WordPaths } from "../../core/speech/transcribe/word-paths.ts";
import { grammarFor } from "../../core/talk/grammar-for.ts";
import type { Kitchen } from "../../core/talk/model.ts";
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

const speller = createSpeller(await transcriberTokens());
const light = createNodeEngine();
await light.load();

async function measure(name: string, kitchen: Kitchen): Promise<void> {
  const [made, woven, begun, laid]: [number[], number[], number[], number[]] = [[], [], [], []];
  let states = 0;
  for (let run = 0; run < runs; run++) {
    const grammar = await timed((): Grammar => grammarFor(kitchen));
    const what = {
      grammar: grammar.value,
      address: "listen kitchen",
      mode: "addressed",
      stopSentences: [],
    } as const;
    const automaton = await timed(() => toAutomaton(what));
    if (!automaton.value.ok) throw new Error(automaton.value.error);
    const { value } = automaton.value;
    states = value.states.length;
    made.push(grammar.ms);
    woven.push(automaton.ms);
    begun.push((await timed(() => new WordPaths(value, speller).start())).ms);
    laid.push((await timed(() => light.setGrammar(what))).ms);
  }
  const all = median(made) + median(woven) + median(begun);
  printFigure(`${name}: ${states} states`, `${all.toFixed(0)} ms`, `${mostMs} ms`, all <= mostMs);
  print(
    `      grammar ${median(made).toFixed(1)}, automaton ${median(woven).toFixed(1)}, ` +
      `its beginning ${median(begun).toFixed(1)} ms; the light ear ${median(laid).toFixed(0)} ms on top`,
  );
}

printMachine();
const moments = await eveningMoments();
for (const name of ["busy", "which", "breakfast", "lunch"] as const) await measure(name, moments[name]);
await measure("busy, 300 foods more", withManyFoods(moments.busy));
light.free();
