import type { Signal } from "@preact/signals";
import type { VoiceOrder } from "../../core/talk/model.ts";
import { minutes, plus } from "../../core/units/quantity.ts";
import type { Instant } from "../../core/units/quantity.ts";
import type { Sound } from "../sound/player.ts";
import type { Clock } from "./clock.ts";

/** Carries out what the cook asks of the voice itself. */
export function obey(
  order: VoiceOrder,
  sound: Sound,
  clock: Clock,
  quietUntil: Signal<Instant | null>,
): void {
  switch (order.type) {
    case "Louder":
      sound.louder();
      return;
    case "Softer":
      sound.softer();
      return;
    case "Slower":
      sound.slower();
      return;
    case "Faster":
      sound.faster();
      return;
    case "QuietFor":
      quietUntil.value = plus(clock.read(), minutes(order.minutes));
      return;
    case "SpeakAgain":
      quietUntil.value = null;
      return;
    case "StopTalking":
      sound.stopTalking();
  }
}
