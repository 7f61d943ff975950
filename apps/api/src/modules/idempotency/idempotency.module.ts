import { Module } from '@nestjs/common';
import { AnswerOnceUseCase, Clock, Fingerprint, Sealer, SharedTransaction } from '@endfloat/workshop';
import { useCase } from '../../http/index.js';

/** What the shell answers requests with that carry a key. */
@Module({ providers: [useCase(AnswerOnceUseCase, SharedTransaction, Clock, Fingerprint, Sealer)] })
export class IdempotencyModule {}
