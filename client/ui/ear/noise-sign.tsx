import type { RoomNoise } from "../../../core/speech/room-noise.ts";

/** Why nothing is heard, and what helps. The element stays while its words go, or they would not be read out. */
export function NoiseSign({ noise }: { readonly noise: RoomNoise }) {
  return (
    <p class={`noise-sign noise-${noise}`} role="status">
      {noise === "too-loud" && (
        <>
          <b>Too loud to hear you.</b>{" "}
          <span>Turn the fan or tap down, or come closer; typing and tapping work.</span>
        </>
      )}
    </p>
  );
}
