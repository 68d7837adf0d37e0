import { useRef } from "preact/hooks";
import { ModelBar } from "../ear/model-bar.tsx";
import { CheckFindings, type Kept } from "./check-findings.tsx";
import type { CheckProps } from "./check-props.ts";
import { CheckSentence } from "./check-sentence.tsx";
import { closingWords, useEarCheck } from "./use-ear-check.ts";

/** The check of the ear, from the first sentence to the cook's word on what it found. */
export function EarCheckPage(props: CheckProps) {
  const { galley, onClose } = props;
  const { settings, ear } = galley;
  const offered = useRef<Kept | null>(null);
  const keep = (): void => {
    if (offered.current !== null) settings.value = { ...settings.value, ...offered.current };
    onClose();
  };
  const running = useEarCheck(props, (words) => {
    if (words === closingWords.keep) keep();
    if (words === closingWords.leave) onClose();
  });
  const check = running.check.value;
  const state = ear.state.value;
  if (check?.phase.kind === "over") {
    return (
      <CheckFindings
        check={check}
        settings={settings.value}
        onOffer={(kept) => (offered.current = kept)}
        onKeep={keep}
        onLeave={onClose}
        onAgain={running.restart}
      />
    );
  }
  if (state.kind === "trouble") {
    return (
      <div class="check">
        <p class="check-verdict" role="alert">
          {state.sentence}
        </p>
        <div class="check-keys">
          <button type="button" class="key" onClick={() => void ear.start()}>
            Try again
          </button>
        </div>
      </div>
    );
  }
  if (check === null) {
    return (
      <div class="check">
        <p class="check-verdict" role="status">
          Getting ready to listen.
        </p>
        {state.loading !== null && <ModelBar loading={state.loading} />}
        <p class="hint">Five short sentences, two minutes at most. Nothing that is said is carried out.</p>
      </div>
    );
  }
  return <CheckSentence running={running} check={check} ear={state} />;
}
