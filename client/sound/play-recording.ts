/** A recording that is being played. */
export interface Playing {
  readonly stop: () => void;
}

/**
 * Plays one WAV file; call it from a touch.
 * @param onEnd called once, when it is over, was stopped, or could not be played: then with a sentence
 */
export function playRecording(
  wav: Uint8Array<ArrayBuffer>,
  onEnd: (trouble: string | null) => void,
): Playing {
  const address = URL.createObjectURL(new Blob([wav], { type: "audio/wav" }));
  const audio = new Audio(address);
  let isOver = false;
  const end = (trouble: string | null): void => {
    if (isOver) return;
    isOver = true;
    audio.pause();
    URL.revokeObjectURL(address);
    onEnd(trouble);
  };
  const fail = (): void => end("This sentence cannot be played. Touch the page once more, or delete it.");
  audio.onended = () => end(null);
  audio.onerror = fail;
  audio.play().catch(fail);
  return { stop: () => end(null) };
}
