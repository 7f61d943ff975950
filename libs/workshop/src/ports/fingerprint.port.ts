/** Fingerprint of a text: tells whether two texts are the same, on any machine. */
export abstract class Fingerprint {
  /** SHA-256 of the text in UTF-8, hexadecimal */
  abstract of(text: string): string;
}
