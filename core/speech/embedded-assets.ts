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

/** The embedded transcriber: the package that carries its two networks, the folder there, and what is served of it. */
export const embeddedTranscriber = {
  package: "@moonshine-ai/moonshine-js",
  folder: "model/tiny/quantized",
  /** Below `embeddedBase`. */
  path: "transcriber/",
  encoder: "encoder_model.onnx",
  decoder: "decoder_model_merged.onnx",
  tokens: "tokens.json",
} as const;

/** The voice detector: the package that carries its network, and the file, which is served below `embeddedBase`. */
export const embeddedDetector = {
  package: "@ricky0123/vad-web",
  file: "silero_vad_v6.onnx",
} as const;
