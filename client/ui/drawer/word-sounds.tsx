import { useId, useState } from "preact/hooks";
import type { Session } from "../../../core/cook/session.ts";
import { mostRespellings, readRespelling, type Respelling } from "../../../core/speech/respelling.ts";
import { spokenWords } from "../../../core/speech/spoken-words.ts";
import type { Galley } from "../galley.ts";

interface WordSoundsProps {
  readonly galley: Galley;
  readonly session: Session;
}

/** Shorter words are no names that an ear could fail at. */
const shortest = 4;

/** Words that this cook says otherwise than they are read: the ear listens for them, and the voice says them so. */
export function WordSounds({ galley, session }: WordSoundsProps) {
  const { settings, sayAloud } = galley;
  const { respellings } = settings.value;
  const keep = (next: readonly Respelling[]): void => {
    settings.value = { ...settings.value, respellings: [...next] };
  };
  return (
    <>
      <p class="hint">A word it keeps mishearing? Write it as it sounds: quinoa, keen wah.</p>
      {respellings.length > 0 && (
        <ul class="word-sounds" aria-label="Words as you say them">
          {respellings.map((each) => (
            <li key={`${each.word} ${each.like}`}>
              <span>
                <b>{each.word}</b> sounds like <q>{each.like}</q>
              </span>
              <button type="button" class="key key-small" onClick={() => sayAloud(each.word)}>
                Hear it
              </button>
              <button
                type="button"
                class="key key-small"
                aria-label={`Forget it: ${each.word}`}
                onClick={() => keep(respellings.filter((other) => other !== each))}
              >
                Forget it
              </button>
            </li>
          ))}
        </ul>
      )}
      {respellings.length < mostRespellings ? (
        <NewSound words={wordsTonight(session)} onKeep={(one) => keep([...without(respellings, one), one])} />
      ) : (
        <p class="hint">Fifty words are all it can hold. Forget one to teach it another.</p>
      )}
    </>
  );
}

interface NewSoundProps {
  /** Offered while the cook writes. */
  readonly words: readonly string[];
  readonly onKeep: (one: Respelling) => void;
}

function NewSound({ words, onKeep }: NewSoundProps) {
  const [word, setWord] = useState("");
  const [like, setLike] = useState("");
  const [trouble, setTrouble] = useState<string | null>(null);
  const list = useId();
  const teach = (): void => {
    const read = readRespelling(word, like);
    setTrouble(read.ok ? null : read.error);
    if (!read.ok) return;
    onKeep(read.value);
    setWord("");
    setLike("");
  };
  return (
    <form
      class="field field-row field-words"
      onSubmit={(event) => {
        event.preventDefault();
        teach();
      }}
    >
      <label>
        <span>The word</span>
        <input
          type="text"
          list={list}
          maxLength={40}
          value={word}
          autocomplete="off"
          onInput={(event) => setWord(event.currentTarget.value)}
        />
      </label>
      <datalist id={list}>
        {words.map((each) => (
          <option key={each} value={each} />
        ))}
      </datalist>
      <label>
        <span>As you say it</span>
        <input
          type="text"
          maxLength={60}
          value={like}
          autocomplete="off"
          onInput={(event) => setLike(event.currentTarget.value)}
        />
      </label>
      <button type="submit" class="key" disabled={word.trim() === "" || like.trim() === ""}>
        Teach it
      </button>
      {trouble !== null && (
        <p class="field-trouble" role="alert">
          {trouble}
        </p>
      )}
    </form>
  );
}

/** A word may have several sounds, but each only once. */
const without = (all: readonly Respelling[], { word, like }: Respelling): readonly Respelling[] =>
  all.filter((each) => each.word !== word || each.like !== like);

/** The names of tonight's dishes and of what goes into them, word by word. */
function wordsTonight({ meal }: Session): readonly string[] {
  const names = meal.dishes.flatMap((dish) => [dish.name, ...dish.ingredients.map(({ item }) => item)]);
  const words = names.flatMap(spokenWords).filter((word) => word.length >= shortest);
  return [...new Set(words)].sort();
}
