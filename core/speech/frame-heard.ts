/** What one frame sounds like. */
export type FrameHeard = {
  /** dBFS in the speech band. */
  readonly levelDb: number;
  /** How likely it is a human voice, 0 to 1; null where nothing but the level is known. */
  readonly voice: number | null;
};
