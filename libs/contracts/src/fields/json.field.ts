import { field, type FieldOptions } from './field.js';
import { isRecord } from './rule.js';
import { textPattern } from './text.js';
import { value } from './value-shape.js';

/**
 * A stored document whose members its own version defines, such as the recorded inputs of a calculation. Its names and
 * texts hold no control characters and no lone surrogates, like every text of the interface.
 */
export const JsonField = (options: FieldOptions & { readonly maxMembers?: number }): PropertyDecorator => {
  const { maxMembers = 1000 } = options;
  return field(options, {
    schema: () => ({ type: 'object', additionalProperties: {}, maxProperties: maxMembers }),
    rules: [
      { name: 'object', detail: 'must be an object', test: isRecord },
      {
        name: 'count',
        detail: `must have at most ${maxMembers} members`,
        test: (given) => isRecord(given) && Object.keys(given).length <= maxMembers,
      },
      {
        name: 'pattern',
        detail: 'must hold no control characters and no broken characters in any of its texts',
        test: isClean,
      },
    ],
    shape: value,
  });
};

const cleanText = new RegExp(textPattern({ max: Infinity, min: 0 }), 'u');

/** Whether every name and text in a document can be stored and shown; documents are shallow, the body limits it. */
function isClean(given: unknown): boolean {
  if (typeof given === 'string') return cleanText.test(given);
  if (Array.isArray(given)) return given.every(isClean);
  if (!isRecord(given)) return true;
  return Object.entries(given).every(([name, member]) => cleanText.test(name) && isClean(member));
}
