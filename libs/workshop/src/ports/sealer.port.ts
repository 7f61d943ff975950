/** Keeps text so that the database alone does not tell it. */
export abstract class Sealer {
  /** @param purpose what it is kept for; only the same purpose opens it again */
  abstract seal(text: string, purpose: string): string;
  /** @throws Error when it was sealed by another service or for another purpose, or was changed */
  abstract open(sealed: string, purpose: string): string;
}
