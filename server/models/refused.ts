/**
 * What stops the reading, fetching or packing of a model, thrown through streams that know no results and turned
 * into one at the edge of this folder. Its message is the sentence for the person.
 */
export class Refused extends Error {}

/** The sentence of whatever stopped the work; a fault of ours is thrown on. */
export function sentenceOf(problem: unknown, place: string): string {
  if (problem instanceof Refused) return problem.message;
  if (problem instanceof Error && problem.name === "AbortError") return `Stopped; ${place} was not added.`;
  if (!(problem instanceof Error) || !("code" in problem)) throw problem;
  switch (problem.code) {
    case "ENOSPC":
    case "EDQUOT":
      return `The disk is full, so ${place} was not written. Make room and try again.`;
    case "EACCES":
    case "EPERM":
    case "EROFS":
      return `${place} may not be read or written here. Check who owns the file and the folder.`;
    case "ENOENT":
      return `${place} is not there. Check its name.`;
    default:
      throw problem;
  }
}
