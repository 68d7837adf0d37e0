import type { Signal } from "@preact/signals";
import type { Settings } from "../../kitchen/settings.ts";
import { Choice } from "./choice.tsx";

const looks = [
  ["auto", "As the device"],
  ["light", "Light"],
  ["dark", "Dark"],
  ["contrast", "High contrast"],
] as const;

/** How the page looks. */
export function LookKeys({ settings }: { readonly settings: Signal<Settings> }) {
  return (
    <Choice
      name="Look"
      options={looks}
      value={settings.value.look}
      onChoose={(look) => {
        settings.value = { ...settings.value, look };
      }}
    />
  );
}
