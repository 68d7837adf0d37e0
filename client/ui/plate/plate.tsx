import type { DishId } from "../../../core/recipe/model.ts";
import { shortName } from "../../../core/cook/say-call.ts";
import { capital } from "../../../core/units/capital.ts";
import type { Deed, OnDeed } from "../parts/deed.ts";
import { DishMark } from "../parts/dish-mark.tsx";
import type { DishMark as Mark } from "../parts/dish-marks.ts";
import { FitText } from "../parts/fit-text.tsx";
import type { PlateContent } from "./plate-content.ts";

interface PlateProps {
  readonly content: PlateContent;
  /** What else wants the cook, the most pressing first. */
  readonly also: readonly PlateContent[];
  /** What those who help have in hand. */
  readonly handed: readonly PlateContent[];
  readonly marks: ReadonlyMap<DishId, Mark>;
  readonly onDeed: OnDeed;
}

/** What to do now, as large as it goes; what else is open stands in a slim stack beneath. */
export function Plate({ content, also, handed, marks, onDeed }: PlateProps) {
  const mark = content.dish === null ? undefined : marks.get(content.dish.id);
  // What answers a ring stands where the hand goes; what may be done instead of a step stands aside.
  const isRing = content.tone === "ring";
  return (
    <main class={`plate tone-${content.tone} ${mark === undefined ? "" : `dish-${mark.colour}`}`}>
      <header class="plate-head">
        <DishMark mark={mark} />
        <h1>{content.dish === null ? capital(content.about) : shortName(content.dish)}</h1>
        {content.dish !== null && <span class="plate-about">{content.about}</span>}
      </header>
      {!isRing && (
        <div class="plate-more">{content.more.map((deed) => key(deed, "key-small key-quiet", onDeed))}</div>
      )}
      <FitText text={content.sentence} />
      <div class="plate-foot">
        {content.main !== null && key(content.main, "key-main", onDeed)}
        {isRing && content.more.map((deed) => key(deed, "key-second", onDeed))}
        <PlateDetails content={content} />
      </div>
      {also.length + handed.length > 0 && (
        <AlsoStack also={also} handed={handed} marks={marks} onDeed={onDeed} />
      )}
    </main>
  );
}

function key(deed: Deed, kind: string, onDeed: OnDeed) {
  return (
    <button type="button" key={deed.label} class={`key ${kind}`} onClick={() => onDeed(deed)}>
      {deed.label}
    </button>
  );
}

function PlateDetails({ content }: Pick<PlateProps, "content">) {
  return (
    <div class="plate-details">
      {content.chips.length > 0 && (
        <ul class="chips" aria-label="What goes in">
          {content.chips.map((chip) => (
            <li key={chip}>{chip}</li>
          ))}
        </ul>
      )}
      {content.until !== null && (
        <p class="plate-until">
          <b>Done when</b> {content.until}
        </p>
      )}
      {content.why !== null && <p class="plate-why">{content.why}</p>}
    </div>
  );
}

/** As many as fit beneath the plate; the rest comes up in its turn. */
const mostAlso = 2;

function AlsoStack({ also, handed, marks, onDeed }: Omit<PlateProps, "content">) {
  const rest = also.length - mostAlso;
  return (
    <ul
      class="also"
      aria-label={handed.length === 0 ? "Also waiting for you" : "Also waiting, for you and who helps"}
    >
      {[...handed, ...also.slice(0, mostAlso)].map((one) => (
        <li key={one.key} class={`tone-${one.tone} ${handed.includes(one) ? "is-handed" : ""}`}>
          <DishMark mark={one.dish === null ? undefined : marks.get(one.dish.id)} />
          <span class="also-words">
            <b>{one.lead}:</b> {one.sentence}
          </span>
          {one.main !== null && <AlsoKey deed={one.main} about={one.sentence} onDeed={onDeed} />}
        </li>
      ))}
      {rest > 0 && <li class="also-rest">and {rest} more after that</li>}
    </ul>
  );
}

function AlsoKey({
  deed,
  about,
  onDeed,
}: {
  readonly deed: Deed;
  readonly about: string;
  readonly onDeed: OnDeed;
}) {
  return (
    <button
      type="button"
      class="key key-small"
      aria-label={`${deed.label}: ${about}`}
      onClick={() => onDeed(deed)}
    >
      {deed.label}
    </button>
  );
}
