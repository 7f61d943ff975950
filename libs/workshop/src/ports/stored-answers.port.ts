/** What was answered to a request that carried a key, as far as it must be the same again. */
export interface AnswerToKeep {
  readonly status: number;
  /** where what was made stands; null where nothing was */
  readonly location: string | null;
  /** header fields that belong to the answer */
  readonly headers: Readonly<Record<string, string>>;
  /** text of the body; null where there is none */
  readonly body: string | null;
}

/** A stored answer: what it says is sealed, and gone once it was erased or has expired. */
export interface StoredAnswer {
  readonly keyHash: string;
  /** of the request that was answered */
  readonly fingerprint: string;
  readonly status: number;
  readonly location: string | null;
  /** sealed header fields and body; null once erased */
  readonly content: string | null;
  readonly recordedAt: string;
  readonly expiresAt: string;
}

export interface StoredAnswerStore {
  /** Holds the key to the end of the transaction; false when another transaction holds it now. Never waits. */
  claim(keyHash: string): Promise<boolean>;
  /** The answer that is kept at this moment. */
  find(keyHash: string, now: string): Promise<StoredAnswer | undefined>;
  add(answer: StoredAnswer): Promise<void>;
  /** Erases the content of answers that nobody may ask for any more; answers how many. */
  eraseExpired(now: string): Promise<number>;
}
