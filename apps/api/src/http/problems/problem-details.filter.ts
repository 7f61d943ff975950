import { Catch, type ArgumentsHost, type ExceptionFilter } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { sendProblem } from './send-problem.js';

/** Everything a handler throws leaves as problem details. */
@Catch()
export class ProblemDetailsFilter implements ExceptionFilter {
  catch(error: unknown, host: ArgumentsHost): void {
    const http = host.switchToHttp();
    sendProblem(error, http.getRequest<FastifyRequest>(), http.getResponse<FastifyReply>());
  }
}
