import { useLayoutEffect, useMemo, useState } from "preact/hooks";
import type { EarCheck } from "../../../core/speech/check/ear-check.ts";
import { type EarFindings, findingsOf } from "../../../core/speech/check/ear-findings.ts";
import { findingWords } from "../../../core/speech/check/finding-words.ts";
import type { Settings } from "../../kitchen/settings.ts";
import { Choice } from "../parts/choice.tsx";
import { CheckPips } from "./check-pips.tsx";
import { MeasuredBar } from "./level-bar.tsx";

/** What the cook may keep of a check. */
export type Kept = Pick<Settings, "tuning" | "address">;

interface CheckFindingsProps {
  readonly check: EarCheck;
  readonly settings: Settings;
  /** Called at every change of mind: what would be kept now; null where nothing would change. */
  readonly onOffer: (kept: Kept | null) => void;
  readonly onKeep: () => void;
  readonly onLeave: () => void;
  readonly onAgain: () => void;
}

/** What a check found, what it would change, and the cook's word on it. */
export function CheckFindings({ check, settings, onOffer, onKeep, onLeave, onAgain }: CheckFindingsProps) {
  const findings = useMemo(() => findingsOf(check, settings.tuning), [check, settings.tuning]);
  const [address, setAddress] = useState(check.address);
  const tuning = tuningAfter(findings, settings.tuning);
  const changes = address !== settings.address || JSON.stringify(tuning) !== JSON.stringify(settings.tuning);
  // Before anybody can read it: a quick word must find what it is about.
  useLayoutEffect(() => onOffer(changes ? { tuning, address } : null));
  const [first, ...more] = findingWords(findings, check.address);
  return (
    <div class="check">
      <CheckPips check={check} />
      <div role="status">
        <p class="check-verdict">{first}</p>
        {more.map((sentence) => (
          <p key={sentence} class="check-finding">
            {sentence}
          </p>
        ))}
      </div>
      {findings.offers.length > 0 && (
        <Choice
          name="The kitchen's name"
          options={[check.address, ...findings.offers].map((name) => [name, `“${name}”`] as const)}
          value={address}
          onChoose={setAddress}
        />
      )}
      {findings.levels !== null && (
        <dl class="level">
          <MeasuredBar name="Your voice" dbfs={findings.levels.bandDb} kind="voice" />
          {findings.levels.noiseDb !== null && (
            <MeasuredBar name="The room" dbfs={findings.levels.noiseDb} kind="room" />
          )}
        </dl>
      )}
      <div class="check-keys">
        {changes && (
          <button type="button" class="key key-main" onClick={onKeep}>
            Keep it
          </button>
        )}
        <button type="button" class="key" onClick={onLeave}>
          {changes ? "As before" : "Done"}
        </button>
        <button type="button" class="key key-quiet" onClick={onAgain}>
          Check again
        </button>
      </div>
      {changes && (
        <p class="hint">
          {`Nothing is set before you touch “Keep it”, or say “${check.address}, keep it”; “as before” leaves all as it was.`}
        </p>
      )}
    </div>
  );
}

/** A check that found nothing to change, or nothing out, leaves what an earlier one has set. */
function tuningAfter({ proposal }: EarFindings, before: Settings["tuning"]): Settings["tuning"] {
  switch (proposal.kind) {
    case "tune":
      return proposal.tuning;
    case "back-to-usual":
      return null;
    case "as-it-is":
    case "too-noisy":
    case "unknown":
      return before;
  }
}
