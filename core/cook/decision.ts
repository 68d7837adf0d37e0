import type { Result } from "../units/result.ts";
import type { Happening } from "./events.ts";
import type { Refusal } from "./refusal.ts";

/** What an order brings about, or why it does not. */
export type Decision = Result<readonly Happening[], Refusal>;
