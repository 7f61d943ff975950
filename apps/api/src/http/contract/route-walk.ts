import { RequestMethod } from '@nestjs/common';
import {
  METHOD_METADATA,
  PATH_METADATA,
  ROUTE_ARGS_METADATA,
  VERSION_METADATA,
} from '@nestjs/common/constants.js';
import type { ModulesContainer } from '@nestjs/core';
import type { FieldClass } from '@endfloat/contracts';
import { answerRuleOf, type AnswerRule } from '../answers/answer.decorator.js';
import { rulesOf, type RouteRules } from '../requests/route-rules.js';

/** One argument that Nest fills from the request. */
export interface RouteArgument {
  readonly source: 'body' | 'query' | 'path' | 'other';
  /** Name of a single member that was asked for, as in `@Body('name')`. */
  readonly member: string | undefined;
  readonly type: FieldClass | undefined;
}

/** A handler with everything its decorators say. */
export interface WalkedRoute {
  readonly name: string;
  /** Method in capitals. */
  readonly method: string;
  /** Path with parameters as `:name`. */
  readonly path: string;
  readonly operationId: string;
  readonly rules: Partial<RouteRules>;
  readonly answer: AnswerRule | undefined;
  readonly arguments: readonly RouteArgument[];
}

/** Nest's numbers for where an argument comes from. */
const sources: Readonly<Record<string, RouteArgument['source']>> = { 3: 'body', 4: 'query', 5: 'path' };

/** Every route of every controller. */
export function walkRoutes(modules: ModulesContainer): readonly WalkedRoute[] {
  const controllers = [...modules.values()].flatMap((module) =>
    [...module.controllers.values()].map(({ metatype }) => metatype as Controller),
  );
  return [...new Set(controllers)].flatMap(routesOf);
}

type Controller = new (...parts: never[]) => object;

function routesOf(controller: Controller): WalkedRoute[] {
  const version = Reflect.getMetadata(VERSION_METADATA, controller) as string | undefined;
  const base = `${version === undefined ? '' : `v${version}/`}${String(Reflect.getMetadata(PATH_METADATA, controller) ?? '')}`;
  const prototype = controller.prototype as Record<string, unknown>;
  return Object.getOwnPropertyNames(prototype).flatMap((operationId) => {
    const handler = prototype[operationId];
    if (typeof handler !== 'function' || !Reflect.hasMetadata(METHOD_METADATA, handler)) return [];
    const own = String(Reflect.getMetadata(PATH_METADATA, handler) ?? '');
    return [
      {
        name: `${controller.name}.${operationId}`,
        method: RequestMethod[Number(Reflect.getMetadata(METHOD_METADATA, handler))] ?? 'GET',
        path: `/${[base, own]
          .flatMap((part) => part.split('/'))
          .filter((part) => part !== '')
          .join('/')}`,
        operationId,
        rules: rulesOf(handler),
        answer: answerRuleOf(handler),
        arguments: argumentsOf(controller, prototype, operationId),
      },
    ];
  });
}

function argumentsOf(controller: object, prototype: object, name: string): RouteArgument[] {
  const filled = (Reflect.getMetadata(ROUTE_ARGS_METADATA, controller, name) ?? {}) as Record<
    string,
    { index: number; data?: unknown }
  >;
  const types = (Reflect.getMetadata('design:paramtypes', prototype, name) ?? []) as FieldClass[];
  return Object.entries(filled).map(([key, { index, data }]) => ({
    source: sources[key.split(':', 1)[0] ?? ''] ?? 'other',
    member: typeof data === 'string' ? data : undefined,
    type: types[index],
  }));
}
