/**
 * The part of WebAssembly that the server uses. Node 20 has all of it, but its types leave it to the
 * browser's library, and with that the compiler would also let `window` and `document` through.
 * Source: W3C WebAssembly JavaScript Interface, Core Specification 2.0
 */
declare namespace WebAssembly {
  type ImportValue = ((...args: never[]) => unknown) | number | bigint | Memory;
  type Imports = Readonly<Record<string, Readonly<Record<string, ImportValue>>>>;

  class Memory {
    constructor(size: { readonly initial: number; readonly maximum?: number });
    readonly buffer: ArrayBuffer;
    grow(pages: number): number;
  }

  interface Module {
    readonly [Symbol.toStringTag]: "WebAssembly.Module";
  }

  class Instance {
    constructor(module: Module, imports?: Imports);
    readonly exports: Readonly<Record<string, unknown>>;
  }

  type BufferSource = ArrayBufferView | ArrayBuffer;

  function compile(bytes: BufferSource): Promise<Module>;
  function instantiate(module: Module, imports?: Imports): Promise<Instance>;
}
