import type { OnnxTensor } from "../../core/speech/onnx.ts";

/** A tensor as the runtime's own: it keeps what it is made of. */
export class FakeTensor implements OnnxTensor {
  readonly type: string;
  readonly data: unknown;
  readonly dims: readonly number[];
  constructor(type: string, data: unknown, dims: readonly number[]) {
    this.type = type;
    this.data = data;
    this.dims = dims;
  }
}

/** What a network is given, by name. */
export type Feeds = Readonly<Record<string, OnnxTensor>>;

/** What a tensor holds; nothing where there is none. */
export const numbersIn = (tensor: OnnxTensor | undefined): readonly number[] =>
  tensor === undefined ? [] : Array.from(tensor.data as ArrayLike<number | bigint>, Number);
