import type { ComponentChildren } from "preact";
import type { Deed } from "../parts/deed.ts";
import { MisheardKeys } from "../misheard/misheard-keys.tsx";
import { LookKeys } from "../parts/look-keys.tsx";
import { EarSettings } from "./ear-settings.tsx";
import { LazyValues } from "../values/lazy-values.tsx";
import { DrawerDoors } from "./drawer-doors.tsx";
import type { DrawerProps } from "./drawer-props.ts";
import { CookKeys } from "./cook-keys.tsx";
import { LullKeys } from "./lull-keys.tsx";
import { PaceKeys } from "./pace-keys.tsx";
import { ServingKeys } from "./serving-keys.tsx";
import { SoFar } from "./so-far.tsx";
import { ToPrepare } from "./to-prepare.tsx";
import { TuningKeys } from "./tuning-keys.tsx";
import { VoiceKeys } from "./voice-keys.tsx";
import { WhatIsLeft } from "./what-is-left.tsx";
import { WordSounds } from "./word-sounds.tsx";

/** The parts in the order in which they stand: what is cooked, who cooks and when, then how the kitchen talks and looks. */
const parts = {
  prepare: "To prepare",
  left: "What is left",
  values: "What is in it",
  serving: "When we eat",
  cooks: "Who cooks",
  pace: "How long you take",
  lull: "The last minutes",
  voice: "The voice",
  ear: "The ear",
  words: "Words as you say them",
  misheard: "Misheard sentences",
  look: "The look",
  said: "Said so far",
} as const;

type Part = keyof typeof parts;

const doors = Object.entries(parts).map(([part, title]) => [`drawer-${part}`, title] as const);

/** All that is not wanted every minute: the meal as a whole, the voice, the ear, the look, what was said. */
export function Drawer({ galley, session, sheet, onDeed, onCheckEar, onClose }: DrawerProps) {
  const leave: Deed = { label: "End the meal", intent: { type: "EndMeal" }, words: "end the meal" };
  const actAndClose = (deed: Deed): void => {
    onDeed(deed);
    onClose();
  };
  return (
    <div class="drawer">
      <DrawerDoors parts={doors} />
      <Section part="prepare">
        <ToPrepare session={session} sheet={sheet} clock={galley.clock} store={galley.store} />
      </Section>
      <Section part="left">
        <WhatIsLeft session={session} onDeed={actAndClose} />
      </Section>
      <Section part="values">
        <LazyValues galley={galley} session={session} />
      </Section>
      <Section part="serving">
        <ServingKeys session={session} sheet={sheet} clock={galley.clock} onDeed={onDeed} />
      </Section>
      <Section part="cooks">
        <CookKeys session={session} onDeed={onDeed} />
      </Section>
      <Section part="pace">
        <PaceKeys session={session} store={galley.store} />
      </Section>
      <Section part="lull">
        <LullKeys session={session} sheet={sheet} store={galley.store} />
      </Section>
      <Section part="voice">
        <VoiceKeys galley={galley} onDeed={onDeed} />
      </Section>
      <Section part="ear">
        <EarSettings settings={galley.settings} />
        <TuningKeys settings={galley.settings} onCheckEar={onCheckEar} />
      </Section>
      <Section part="words">
        <WordSounds galley={galley} session={session} />
      </Section>
      <Section part="misheard">
        <MisheardKeys galley={galley} />
      </Section>
      <Section part="look">
        <LookKeys settings={galley.settings} />
      </Section>
      <Section part="said">
        <SoFar lines={galley.caller.lines.value} clock={galley.clock} />
      </Section>
      <button type="button" class="key key-danger" onClick={() => actAndClose(leave)}>
        End the meal
      </button>
    </div>
  );
}

function Section({ part, children }: { readonly part: Part; readonly children: ComponentChildren }) {
  const id = `drawer-${part}`;
  return (
    <section aria-labelledby={id}>
      <h3 id={id} tabIndex={-1}>
        {parts[part]}
      </h3>
      {children}
    </section>
  );
}
