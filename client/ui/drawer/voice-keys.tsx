import type { Galley } from "../galley.ts";
import { Choice } from "../parts/choice.tsx";
import type { Deed, OnDeed } from "../parts/deed.ts";

const voices = [
  ["slt", "Clear"],
  ["kal16", "Plain"],
  ["awb", "Highland"],
  ["rms", "Deep"],
] as const;

const deeds: readonly Deed[] = [
  { label: "Louder", intent: { type: "Louder" }, words: "louder" },
  { label: "Softer", intent: { type: "Softer" }, words: "softer" },
  { label: "Slower", intent: { type: "Slower" }, words: "slower" },
  { label: "Faster", intent: { type: "Faster" }, words: "faster" },
];

const quiet: Deed = {
  label: "Quiet for ten minutes",
  intent: { type: "QuietFor", minutes: 10 },
  words: "quiet for ten minutes",
};
const speak: Deed = { label: "Speak again", intent: { type: "SpeakAgain" }, words: "you can talk again" };

/** Which voice speaks, how loud and how fast, or not at all for a while. */
export function VoiceKeys({ galley, onDeed }: { readonly galley: Galley; readonly onDeed: OnDeed }) {
  const { settings, caller, clock } = galley;
  const isQuiet = (caller.quietUntil.value ?? 0) > clock.now.value;
  return (
    <>
      <Choice
        name="Which voice"
        options={voices}
        value={settings.value.voice}
        onChoose={(voice) => {
          settings.value = { ...settings.value, voice };
        }}
      />
      <div class="choice">
        {[...deeds, isQuiet ? speak : quiet].map((deed) => (
          <button key={deed.label} type="button" class="key key-small" onClick={() => onDeed(deed)}>
            {deed.label}
          </button>
        ))}
      </div>
    </>
  );
}
