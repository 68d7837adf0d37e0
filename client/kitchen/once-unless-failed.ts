/** However often it is called meanwhile, there is one; after a failure the next call tries again. */
export function onceUnlessFailed<T>(load: () => Promise<T>): () => Promise<T> {
  let loading: Promise<T> | null = null;
  return () => {
    loading ??= load().catch((thrown: unknown) => {
      loading = null;
      throw thrown;
    });
    return loading;
  };
}
