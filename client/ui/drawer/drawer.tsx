import type { Deed } from "../parts/deed.ts";
import { MisheardKeys } from "../misheard/misheard-keys.tsx";
import { LookKeys } from "../parts/look-keys.tsx";
import { EarSettings } from "./ear-settings.tsx";
import { LazyValues } from "../values/lazy-values.tsx";
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

/** All that is not wanted every minute: the meal as a whole, the voice, the ear, the look, what was said. */
export function Drawer({ galley, session, sheet, onDeed, onCheckEar, onClose }: DrawerProps) {
  const leave: Deed = { label: "End the meal", intent: { type: "EndMeal" }, words: "end the meal" };
  const actAndClose = (deed: Deed): void => {
    onDeed(deed);
    onClose();
  };
  return (
    <div class="drawer">
      <section aria-labelledby="drawer-prepare">
        <h3 id="drawer-prepare">To prepare</h3>
        <ToPrepare session={session} sheet={sheet} clock={galley.clock} store={galley.store} />
      </section>
      <section aria-labelledby="drawer-left">
        <h3 id="drawer-left">What is left</h3>
        <WhatIsLeft session={session} onDeed={actAndClose} />
      </section>
      <section aria-labelledby="drawer-values">
        <h3 id="drawer-values">What is in it</h3>
        <LazyValues galley={galley} session={session} />
      </section>
      <section aria-labelledby="drawer-serving">
        <h3 id="drawer-serving">When we eat</h3>
        <ServingKeys session={session} sheet={sheet} clock={galley.clock} onDeed={onDeed} />
      </section>
      <section aria-labelledby="drawer-cooks">
        <h3 id="drawer-cooks">Who cooks</h3>
        <CookKeys session={session} onDeed={onDeed} />
      </section>
      <section aria-labelledby="drawer-pace">
        <h3 id="drawer-pace">How long you take</h3>
        <PaceKeys session={session} store={galley.store} />
      </section>
      <section aria-labelledby="drawer-lull">
        <h3 id="drawer-lull">The last minutes</h3>
        <LullKeys session={session} sheet={sheet} store={galley.store} />
      </section>
      <section aria-labelledby="drawer-voice">
        <h3 id="drawer-voice">The voice</h3>
        <VoiceKeys galley={galley} onDeed={onDeed} />
      </section>
      <section aria-labelledby="drawer-ear">
        <h3 id="drawer-ear">The ear</h3>
        <EarSettings settings={galley.settings} />
        <TuningKeys settings={galley.settings} onCheckEar={onCheckEar} />
      </section>
      <section aria-labelledby="drawer-words">
        <h3 id="drawer-words">Words as you say them</h3>
        <WordSounds galley={galley} session={session} />
      </section>
      <section aria-labelledby="drawer-misheard">
        <h3 id="drawer-misheard">Misheard sentences</h3>
        <MisheardKeys galley={galley} />
      </section>
      <section aria-labelledby="drawer-look">
        <h3 id="drawer-look">The look</h3>
        <LookKeys settings={galley.settings} />
      </section>
      <section aria-labelledby="drawer-said">
        <h3 id="drawer-said">Said so far</h3>
        <SoFar lines={galley.caller.lines.value} clock={galley.clock} />
      </section>
      <button type="button" class="key key-danger" onClick={() => actAndClose(leave)}>
        End the meal
      </button>
    </div>
  );
}
