import { effect, signal } from "@preact/signals";
import type { Signal } from "@preact/signals";
import * as z from "zod/mini";
import { mostRespellings, readRespelling } from "../../core/speech/respelling.ts";
import { tuningLimits } from "../../core/speech/tuning-limits.ts";
import { parseJson, readItem } from "../storage/kept-log.ts";

const settingsSchema = z.strictObject({
  /** Light or dark follows the device with `auto`. */
  look: z.enum(["auto", "light", "dark", "contrast"]),
  /** The words before a command. */
  address: z.string().check(z.minLength(3), z.maxLength(40)),
  /** `addressed`: the address first. `open`: every sentence counts. `tap`: only after a touch. */
  listening: z.enum(["addressed", "open", "tap"]),
  /** Which of the bundled voices speaks. */
  voice: z.enum(["slt", "kal16", "awb", "rms"]),
  /** Whether the sound of misheard sentences is kept in this browser. */
  keepMisheard: z.boolean(),
  /** Words that the cook says otherwise than they are read. What cannot be one is as if it had not been set. */
  respellings: z.catch(
    z
      .array(
        z
          .strictObject({ word: z.string(), like: z.string() })
          .check(z.refine(({ word, like }) => readRespelling(word, like).ok)),
      )
      .check(z.maxLength(mostRespellings)),
    [],
  ),
  /** What a check of the ear has set; null: nothing. What cannot be right is as if it had not been set. */
  tuning: z.catch(
    z.nullable(
      z.strictObject({
        gainDb: z.number().check(z.minimum(tuningLimits.gainDb[0]), z.maximum(tuningLimits.gainDb[1])),
        quietestDb: z
          .number()
          .check(z.minimum(tuningLimits.quietestDb[0]), z.maximum(tuningLimits.quietestDb[1])),
      }),
    ),
    null,
  ),
});

/** What this device keeps to itself: how it looks, listens and speaks. */
export type Settings = z.infer<typeof settingsSchema>;

const key = "stovecall.settings";

/** The address that was told apart best in measurements is the default (docs/decisions). */
export const defaultSettings: Settings = {
  look: "auto",
  address: "listen kitchen",
  listening: "addressed",
  voice: "slt",
  keepMisheard: false,
  respellings: [],
  tuning: null,
};

/** The kept settings, as a signal that keeps itself. */
export function createSettings(): { readonly settings: Signal<Settings>; readonly close: () => void } {
  const stored: unknown = parseJson(readItem(key) ?? "null");
  const merged = settingsSchema.safeParse({
    ...defaultSettings,
    ...(typeof stored === "object" ? stored : null),
  });
  const settings = signal<Settings>(merged.success ? merged.data : defaultSettings);
  const close = effect(() => {
    const text = JSON.stringify(settings.value);
    try {
      localStorage.setItem(key, text);
    } catch {
      // A forbidden store costs only the choice at the next visit.
    }
  });
  return { settings, close };
}
