import { ZERO, type Rational } from "../units/rational.ts";
import { servingsWords } from "./servings-words.ts";
import { thingIs } from "./wanted.ts";

type Of = { readonly name: string; readonly servings: Rational; readonly of: string };

/** What each reason tells besides its code. */
interface Reasons {
  readonly NothingCooked: unknown;
  readonly NoSuchDish: { readonly asked: string };
  readonly NoSuchLeftover: unknown;
  readonly StoredAlready: { readonly name: string };
  readonly NoAmount: unknown;
  readonly MoreThanMade: Of;
  readonly MoreThanLeft: Of;
  readonly MoreThanCold: Of;
  readonly HeatedAlready: { readonly name: string };
  readonly HeatAllOfIt: { readonly name: string; readonly words: string };
  readonly NotKeptAgain: { readonly name: string };
  readonly AmountNotKnown: { readonly name: string; readonly words: string };
  readonly NotCooling: { readonly name: string };
  readonly CoolingLongAgo: { readonly name: string };
  readonly NoThing: unknown;
  readonly WantedAlready: { readonly name: string };
  readonly NotWanted: { readonly name: string };
  readonly BoughtAlready: { readonly name: string };
  readonly NotBought: { readonly name: string };
  readonly NothingToUndo: unknown;
}

type Code = keyof Reasons;

/** Why an order about the house was not carried out. Nothing has changed. */
export type HouseRefusal<C extends Code = Code> = {
  readonly [Each in C]: { readonly code: Each } & Reasons[Each];
}[C];

const sentences: { readonly [Each in Code]: (refusal: HouseRefusal<Each>) => string } = {
  NothingCooked: () => "I do not know of a meal that was cooked.",
  NoSuchDish: ({ asked }) => `There was no dish called ${asked} in the last meal.`,
  NoSuchLeftover: () => `I know of no such thing in the fridge. Ask "what is left in the fridge".`,
  StoredAlready: ({ name }) => `That was put away already: ${name}.`,
  NoAmount: () => "Say how much is left, like two servings.",
  MoreThanMade: ({ name, servings, of }) =>
    servings === ZERO
      ? `All that was made of it was put away already: ${name}.`
      : `There can be ${servingsWords(servings, of)} at most left of this: ${name}. Say how much there is.`,
  MoreThanLeft: ({ name, servings, of }) =>
    `There were only ${servingsWords(servings, of)} of this: ${name}. Say "we ate the rest" if it is gone.`,
  MoreThanCold: ({ name, servings, of }) =>
    `There is only so much of it to warm up, ${servingsWords(servings, of)}: ${name}. Say how much you warm.`,
  HeatedAlready: ({ name }) =>
    `It was heated before: ${name}. Once is the practice; eat it now or throw it away, and judge for yourself.`,
  HeatAllOfIt: ({ name, words }) =>
    `I know only that there was this much of it: ${words}. Say that you are warming up all of it: ${name}.`,
  NotKeptAgain: ({ name }) =>
    `It was heated: ${name}. Eat it now or throw it away, and tell me which; it is not kept a second time.`,
  AmountNotKnown: ({ name, words }) =>
    `I know only that there was this much of it: ${words}. Say "we ate the rest" when it is gone: ${name}.`,
  NotCooling: ({ name }) => `I did not know that this is cooling: ${name}.`,
  CoolingLongAgo: ({ name }) =>
    `It left the heat more than six hours ago: ${name}. What has not been kept cold since is to be thrown away.`,
  NoThing: () => "Say what to put on the list, like lemons.",
  WantedAlready: ({ name }) => `${thingIs(name)} on the list already.`,
  NotWanted: ({ name }) => `${thingIs(name)} not on the list.`,
  BoughtAlready: ({ name }) => `${thingIs(name)} in the bag already.`,
  NotBought: ({ name }) => `${thingIs(name)} not in the bag.`,
  NothingToUndo: () => "There is nothing to undo.",
};

/** Plain words, said aloud with wet hands: what is wrong, then what to do. */
export function houseSentence<C extends Code>(refusal: HouseRefusal<C>): string {
  return sentences[refusal.code](refusal);
}
