/** Where our server serves the embedded recogniser from; below it lie the files of `embeddedAssets`. */
export const embeddedBase = "/speech/embedded/";

/** The package whose folder holds them, and the files that a browser loads, each by its path in that folder. */
export const embeddedPackage = "soundswallower";

/** Everything the embedded recogniser fetches, about 10 MB before compression; nothing else need be served. */
export const embeddedAssets: readonly string[] = [
  "soundswallower.web.wasm",
  "model/en-us/dict.txt",
  "model/en-us/feat_params.json",
  "model/en-us/mdef",
  "model/en-us/means",
  "model/en-us/noisedict.txt",
  "model/en-us/sendump",
  "model/en-us/transition_matrices",
  "model/en-us/variances",
];

/** The two embedded transcribers: the small one hears first, the large one where that leaves a doubt. */
export const transcriberSizes = ["quick", "careful"] as const;
export type TranscriberSize = (typeof transcriberSizes)[number];

/** The package that carries their networks, the folder of each there, and their files, served below `embeddedBase`. */
export const embeddedTranscribers = {
  package: "@usefulsensors/moonshine-js",
  folders: { quick: "model/tiny/quantized", careful: "model/base/quantized" },
  encoder: "encoder_model.onnx",
  decoder: "decoder_model_merged.onnx",
  /** Both write in the same tokens. */
  tokens: "transcriber/tokens.json",
} as const;

/** Where the networks of one lie below `embeddedBase`. */
export const transcriberPath = (size: TranscriberSize): string => `transcriber/${size}/`;

/** The voice detector: the package that carries its network, and the file, which is served below `embeddedBase`. */
export const embeddedDetector = {
  package: "@ricky0123/vad-web",
  file: "silero_vad_v6.onnx",
} as const;
