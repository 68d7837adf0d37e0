import { Builder } from "./builder.ts";
import type { Closure } from "./closure.ts";
import type { Compiled } from "./compiled.ts";
import { compile } from "./compiled.ts";
import { mirrored, mirroredClosure } from "./mirror.ts";
import type { Network } from "./network.ts";
import { Orders } from "./orders.ts";

/** A network made ready in one direction of time. */
export interface OneWay {
  readonly compiled: Compiled;
  readonly orders: Orders;
  readonly builder: Builder;
}

/** A network made ready for schedules forwards in time, and backwards from the end of all. */
export interface BothWays {
  readonly there: OneWay;
  readonly back: OneWay;
}

function oneWay(network: Network, closure: Closure): OneWay {
  const compiled = compile(network, closure);
  return { compiled, orders: new Orders(compiled), builder: new Builder(compiled) };
}

/** Makes a network ready in both directions of time. */
export function bothWays(network: Network, closure: Closure): BothWays {
  return {
    there: oneWay(network, closure),
    back: oneWay(mirrored(network), mirroredClosure(network, closure)),
  };
}
