import { v7 } from 'uuid';
import { IdSource } from '@endfloat/workshop/ports';

/** UUIDs of version 7 (RFC 9562). */
export class UuidSource extends IdSource {
  next(): string {
    return v7();
  }
}
