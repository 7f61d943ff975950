/** New record ids (UUIDv7) for records whose id the client did not choose. */
export abstract class IdSource {
  abstract next(): string;
}
