import { IntegerField } from '../fields/integer.field.js';
import { ListField } from '../fields/list.field.js';
import { TextField } from '../fields/text.field.js';

/** One thing that is wrong with a request. The refused value is never repeated. */
export class ProblemFault {
  @TextField({
    description: 'JSON Pointer (RFC 6901) into the body; a parameter is named as `/name`.',
    min: 0,
    max: 512,
    example: '/odometer/unit',
  })
  pointer!: string;

  @TextField({ description: 'Name of the rule that was broken; stable.', max: 64, example: 'oneOf' })
  rule!: string;

  @TextField({ description: 'What the rule asks for, in words.', max: 2000 })
  detail!: string;
}

/** Every refusal and every failure (RFC 9457). */
export class Problem {
  @TextField({
    description: 'Address of the page that explains this type; stable.',
    max: 256,
    pattern: '^(?:https?://|/).+$',
    example: '/problems/invalid-body',
  })
  type!: string;

  @TextField({ description: 'The type in words.', max: 120 })
  title!: string;

  @IntegerField({ description: 'The HTTP status.', min: 400, max: 599, example: 422 })
  status!: number;

  @TextField({
    description: 'Exact reason within the type; stable.',
    max: 80,
    pattern: '^[A-Za-z][A-Za-z0-9.-]*$',
    example: 'input.invalid',
  })
  code!: string;

  @TextField({ description: 'This occurrence in words.', optional: true, max: 1000 })
  detail?: string;

  @TextField({ description: 'The path that was asked.', max: 2048, pattern: '^[^\\u0000-\\u001F]*$' })
  instance!: string;

  @TextField({
    description: 'Names the line in the log of the service (W3C Trace Context).',
    max: 32,
    min: 32,
    pattern: '^[0-9a-f]{32}$',
  })
  traceId!: string;

  @ListField({
    description: 'What is wrong, member by member.',
    optional: true,
    type: () => ProblemFault,
    max: 100,
  })
  errors?: ProblemFault[];
}
