import { createParamDecorator } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import type { ExecutionContext } from '@nestjs/common';
import { currentCaller } from './request-context.js';

const readCaller = createParamDecorator(() => currentCaller());

/** Parameter: who is asking. */
export const CurrentCaller = (): ParameterDecorator => readCaller();

const readStream = createParamDecorator(
  (_data: undefined, context: ExecutionContext) => context.switchToHttp().getRequest<FastifyRequest>().body,
);

/** Parameter: the body as a stream, on a route with `@Consumes`. */
export const BodyStream = (): ParameterDecorator => readStream();
