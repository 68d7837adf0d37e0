/** Does pieces of work one after another, in the order in which they were handed over; a failed one holds up none. */
export function createTurns(): <T>(work: () => Promise<T>) => Promise<T> {
  let last: Promise<unknown> = Promise.resolve();
  return (work) => {
    const done = last.then(work);
    last = done.catch(() => undefined);
    return done;
  };
}
