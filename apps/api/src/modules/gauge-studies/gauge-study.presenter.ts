import type {
  CalculationMethodDto,
  GaugeStudyRevision,
  StoredGaugeStudyResponse,
  GaugeStudyContent,
} from '@endfloat/contracts';
import type { GaugeStudyRecord, GaugeStudyResult, GaugeStudyView } from '@endfloat/workshop';
import { gaugeStudyResult, type GaugeStudy } from '@endfloat/workshop';
import { presentRecorded } from '../../http/answers/recorded.presenter.js';

const gaugeStudyMethod: CalculationMethodDto = {
  name: 'gaugeStudy',
  variant:
    'crossed: two-way random analysis of variance, interaction pooled above a p-value; averageAndRange: constants for up to 10 objects, 3 appraisers, 3 trials; nested: objects within appraisers. Budgets take over the repeatability of single readings with its degrees of freedom',
  source: 'AIAG, Measurement Systems Analysis, 4th ed. (2010); JCGM 100:2008, H.3.6 (pooling)',
};

export function toGaugeStudy(content: GaugeStudyContent): GaugeStudy {
  return {
    characteristic: content.characteristic,
    instrumentKind: content.instrumentKind,
    studiedOn: content.studiedOn,
    design: content.design,
    poolingLevel: content.poolingLevel,
    unit: content.unit,
    measurements: content.measurements.map(({ object, appraiser, value }) => ({ object, appraiser, value })),
    inUse: content.inUse,
    note: content.note,
  };
}

export function presentGaugeStudy({
  record,
  result,
  feedsBudgets,
}: GaugeStudyView): StoredGaugeStudyResponse {
  return { ...presentWith(record, result), feedsBudgets };
}

export function presentGaugeStudyRevision(record: GaugeStudyRecord): GaugeStudyRevision {
  return presentWith(record, gaugeStudyResult(record.content));
}

function presentWith(record: GaugeStudyRecord, result: GaugeStudyResult): GaugeStudyRevision {
  const { content } = record;
  return {
    ...presentRecorded(record),
    characteristic: content.characteristic,
    instrumentKind: content.instrumentKind as GaugeStudyRevision['instrumentKind'],
    studiedOn: content.studiedOn,
    design: content.design,
    poolingLevel: content.poolingLevel,
    unit: content.unit,
    measurements: content.measurements.map(({ object, appraiser, value }) => ({ object, appraiser, value })),
    inUse: content.inUse,
    note: content.note,
    result: presentResult(result),
    repeatability: presentRepeatability(result),
    method: gaugeStudyMethod,
  };
}

function presentRepeatability(result: GaugeStudyResult): GaugeStudyRevision['repeatability'] {
  if (!('study' in result)) return null;
  const { standardDeviation, degreesOfFreedom } = result.study.repeatability;
  return { standardDeviation, degreesOfFreedom: degreesOfFreedom === 'infinite' ? null : degreesOfFreedom };
}

function presentResult(result: GaugeStudyResult): GaugeStudyRevision['result'] {
  switch (result.kind) {
    case 'crossed': {
      const { sources, interactionTest, isInteractionPooled, variation } = result.study;
      return { kind: 'crossed', sources, interactionTest, isInteractionPooled, variation };
    }
    case 'averageAndRange': {
      const { meanRange, appraiserRange, objectRange, variation } = result.study;
      return { kind: 'averageAndRange', meanRange, appraiserRange, objectRange, variation };
    }
    case 'nested': {
      const { sources, variation } = result.study;
      return { kind: 'nested', sources, variation };
    }
    case 'insufficientData':
      return { kind: 'insufficientData', needed: result.needed, got: result.got };
    case 'notBalanced': {
      const { object, appraiser, count } = result;
      return { kind: 'notBalanced', object, appraiser, count };
    }
  }
}
