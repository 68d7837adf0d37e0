import * as z from "zod/mini";
import { instant } from "../../units/quantity.ts";
import { type Misheard, longestMeantLetters } from "./misheard.ts";

const sentence = z.string().check(z.maxLength(longestMeantLetters));

const schema = z.strictObject({
  id: z.string().check(z.minLength(1), z.maxLength(64)),
  at: z.pipe(
    z.number().check(z.nonnegative()),
    z.transform((ms) => instant(ms)),
  ),
  heard: sentence,
  cameTo: z.enum(["nothing", "asked-back", "taken-back"]),
  likely: z.array(sentence).check(z.maxLength(20)),
  meant: z.nullable(sentence),
});

/** Reads one sentence of the record from a store that others could have written to; null where it is none. */
export function parseMisheard(value: unknown): Misheard | null {
  const parsed = schema.safeParse(value);
  return parsed.success ? parsed.data : null;
}
