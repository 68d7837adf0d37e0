import { useSignalEffect } from "@preact/signals";
import type { Signal } from "@preact/signals";
import type { Settings } from "../kitchen/settings.ts";

/** Tells the styles which look the cook has chosen; with `auto` they follow the device. */
export function useLook(settings: Signal<Settings>): void {
  useSignalEffect(() => {
    document.documentElement.dataset["look"] = settings.value.look;
  });
}
