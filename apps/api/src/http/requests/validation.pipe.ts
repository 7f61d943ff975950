import type { ArgumentMetadata, PipeTransform } from '@nestjs/common';
import { readAs, type FieldClass } from '@endfloat/contracts';
import { HttpProblem } from '../problems/http-problem.js';

/** Reads bodies (422 where they break a rule), queries and paths (400) as the classes that handlers name. */
export class ReadAsDeclaredPipe implements PipeTransform {
  transform(value: unknown, { type, metatype }: ArgumentMetadata): unknown {
    if (type === 'custom' || metatype === undefined) return value;
    const input = typeof value === 'object' && value !== null ? { ...value } : {};
    const read = readAs(metatype as FieldClass, input);
    if (read.kind === 'valid') return read.value;
    throw new HttpProblem(type === 'body' ? 'invalid-body' : 'invalid-parameter', {
      faults: [...read.faults],
    });
  }
}
