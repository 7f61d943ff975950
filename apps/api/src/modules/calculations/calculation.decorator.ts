import { applyDecorators, Post } from '@nestjs/common';
import type { FieldClass } from '@endfloat/contracts';
import { Allow, Answer, BodyLimit } from '../../http/index.js';

/** Whoever has a key may run the arithmetic: it stores nothing and sees no records. */
export const everyone = [
  'owner',
  'desk',
  'technician',
  'parts',
  'fleetManager',
  'developer',
  'auditor',
] as const;

/** Four columns of 100,000 numbers fit. */
const calculationBodyLimit = 8 * 1024 * 1024;

/** A stateless calculation at a plural noun below `/v1/calculations`. */
export const Calculation = (path: string, answer: FieldClass, summary: string): MethodDecorator =>
  applyDecorators(
    Post(path),
    Allow(...everyone),
    BodyLimit(calculationBodyLimit),
    Answer(answer, {
      summary,
      description: `${summary}. Keeps nothing. Formula, variant and source are in the answer; published cases in the list of calculations.`,
    }),
  );
