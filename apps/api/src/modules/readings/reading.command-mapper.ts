import type { EvaluateReadingRequest, ReadingContent, RecordReadingRequest } from '@endfloat/contracts';
import {
  invalidInput,
  type Caller,
  type EvaluationCommand,
  type NewReading,
  type ReadingEntry,
} from '@endfloat/workshop';
import { toProperties } from '../instruments/instrument.command-mapper.js';

export function toReadingEntry(content: ReadingContent, caller: Caller): ReadingEntry {
  return {
    checkId: content.checkId,
    phase: content.phase,
    position: content.position,
    place: content.place,
    result: { ...content.result },
    instrumentId: content.instrumentId,
    measuredBy: content.measuredBy ?? caller.userId,
    takenAt: content.takenAt,
    conditions: content.conditions,
    note: content.note,
  };
}

export function toNewReading(request: RecordReadingRequest, caller: Caller): NewReading {
  return { id: request.id, entry: toReadingEntry(request, caller) };
}

export function toEvaluationCommand(request: EvaluateReadingRequest): EvaluationCommand {
  const { limitId, limit, readings, instrumentId, instrument, setUp, repeatability, context } = request;
  return {
    limit: limitAsked(limitId, limit),
    results: readings.map((result) => ({ ...result })),
    instrument: instrumentAsked(instrumentId, instrument),
    setUp,
    repeatability,
    context: context ?? {},
  };
}

function limitAsked(
  id: string | undefined,
  definition: Record<string, unknown> | undefined,
): EvaluationCommand['limit'] {
  if (id !== undefined && definition === undefined) return { id };
  if (definition !== undefined && id === undefined) return { definition };
  throw invalidInput('/limitId', 'oneOf', 'Give either limitId or limit.');
}

function instrumentAsked(
  id: EvaluateReadingRequest['instrumentId'],
  properties: EvaluateReadingRequest['instrument'],
): EvaluationCommand['instrument'] {
  if (id !== undefined && properties !== undefined)
    throw invalidInput('/instrumentId', 'oneOf', 'Give either instrumentId or instrument.');
  if (id !== undefined) return { id };
  return properties === undefined ? null : { properties: toProperties(properties) };
}
