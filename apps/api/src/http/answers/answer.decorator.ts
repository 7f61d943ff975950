import { HttpCode } from '@nestjs/common';
import { ApiOperation } from '@nestjs/swagger';
import type { FieldClass } from '@endfloat/contracts';

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
  /** What the answer is, in words. */
  readonly summary: string;
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
  return withRule(type, status, options);
}

/** The operation answers 204 without a body. */
export const AnswerNothing = (options: OperationText): MethodDecorator => withRule(undefined, 204, options);

/** The handler answers with a stream or with bytes; say the media types with `@Produces`. */
export const AnswerStream = (options: OperationText): MethodDecorator => withRule(undefined, 200, options);

function withRule(type: FieldClass | undefined, status: number, options: AnswerOptions): MethodDecorator {
  const { summary, description = summary, location } = options;
  return (target, key, descriptor) => {
    rules.set(descriptor.value as object, {
      type,
      status,
      summary,
      location: location as AnswerRule['location'],
    });
    HttpCode(status)(target, key, descriptor);
    ApiOperation({ summary, description })(target, key, descriptor);
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
