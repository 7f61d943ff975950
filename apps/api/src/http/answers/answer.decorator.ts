import { HttpCode } from '@nestjs/common';
import { ApiOperation, ApiResponse } from '@nestjs/swagger';
import { componentName, type FieldClass } from '@endfloat/contracts';

export interface OperationText {
  /** One line: what the operation does. */
  readonly summary: string;
  /** More, where one line does not do. */
  readonly description?: string;
}

export interface AnswerOptions extends OperationText {
  /** A record is made: 201 with its `Location`; an answer marked by `alreadyThere` is 200. */
  readonly created?: true;
  /** The work goes on after the answer: 202 with the `Location` of its state. */
  readonly accepted?: true;
  /** Address of what was made or accepted; the path of the request and the `id` of the answer unless told. */
  readonly location?: (answer: never) => string;
}

/** What a handler answers with, as its decorator says. */
export interface AnswerRule {
  /** Class of the answer; undefined where there is no body, or where the handler streams one. */
  readonly type: FieldClass | undefined;
  readonly status: number;
  readonly location: ((answer: Record<string, unknown>) => string) | undefined;
}

const rules = new WeakMap<object, AnswerRule>();

/** The rule of a handler; undefined where it has none. */
export function answerRuleOf(handler: object): AnswerRule | undefined {
  return rules.get(handler);
}

/** The class of the answer: it is written to the document, and only its members leave. Names the operation, too. */
export function Answer(type: FieldClass, options: AnswerOptions): MethodDecorator {
  const status = options.created === true ? 201 : options.accepted === true ? 202 : 200;
  const schema = { $ref: `#/components/schemas/${componentName(type)}` };
  const described = { description: options.description ?? options.summary, schema };
  return withRule({ type, status, location: options.location as AnswerRule['location'] }, options, [
    ApiResponse({ status, ...described }),
    ...(options.created === true
      ? [ApiResponse({ ...described, status: 200, description: 'The same record was there already.' })]
      : []),
  ]);
}

/** The operation answers 204 without a body. */
export function AnswerNothing(options: OperationText): MethodDecorator {
  const described = ApiResponse({ status: 204, description: options.description ?? options.summary });
  return withRule({ type: undefined, status: 204, location: undefined }, options, [described]);
}

/** The handler answers with a stream or with bytes; say the media types with `@Produces`. */
export function AnswerStream(options: OperationText): MethodDecorator {
  const described = ApiResponse({ status: 200, description: options.description ?? options.summary });
  return withRule({ type: undefined, status: 200, location: undefined }, options, [described]);
}

function withRule(
  rule: AnswerRule,
  { summary, description }: OperationText,
  decorators: readonly MethodDecorator[],
): MethodDecorator {
  return (target, key, descriptor) => {
    rules.set(descriptor.value as object, rule);
    const operation = ApiOperation({ summary, description: description ?? summary });
    for (const decorate of [HttpCode(rule.status), operation, ...decorators])
      decorate(target, key, descriptor);
  };
}

const there = new WeakSet<object>();

/** Marks an answer to a creating request as that of an earlier one with the same id and content: 200, not 201. */
export function alreadyThere<T extends object>(answer: T): T {
  there.add(answer);
  return answer;
}

export function isAlreadyThere(answer: unknown): boolean {
  return typeof answer === 'object' && answer !== null && there.has(answer);
}
