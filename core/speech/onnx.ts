import { createTurns } from "./turns.ts";

/** The part of onnxruntime's tensors, sessions and module that we call. */
export type OnnxTensor = { readonly data: unknown; readonly dims: readonly number[] };
export type OnnxSession = {
  readonly inputMetadata: readonly {
    readonly name: string;
    readonly isTensor: boolean;
    readonly shape?: readonly (number | string)[];
  }[];
  readonly run: (feeds: Record<string, OnnxTensor>) => Promise<Record<string, OnnxTensor>>;
  readonly release: () => Promise<void>;
};
export type OnnxRuntime = {
  readonly Tensor: new (type: string, data: unknown, dims: readonly number[]) => OnnxTensor;
  readonly InferenceSession: { readonly create: (model: Uint8Array) => Promise<OnnxSession> };
};

/**
 * A runtime whose sessions work one after another: onnxruntime's module keeps the arguments of a call on one stack,
 * and two calls that are under way at once, even of two networks, take each other's.
 */
export function oneAtATime({ Tensor, InferenceSession }: OnnxRuntime): OnnxRuntime {
  const inTurn = createTurns();
  const create = async (model: Uint8Array): Promise<OnnxSession> => {
    const session = await inTurn(() => InferenceSession.create(model));
    return {
      inputMetadata: session.inputMetadata,
      run: (feeds) => inTurn(() => session.run(feeds)),
      release: () => inTurn(() => session.release()),
    };
  };
  return { Tensor, InferenceSession: { create } };
}
