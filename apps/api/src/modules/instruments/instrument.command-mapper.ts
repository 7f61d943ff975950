import type { InstrumentContent, InstrumentPropertiesDto } from '@endfloat/contracts';
import type { Instrument } from '@endfloat/workshop';

type Properties = Instrument['properties'];

export function toInstrument(content: InstrumentContent): Instrument {
  const { kind, name, serial, retiredOn } = content;
  return { kind, name, serial, retiredOn, properties: toProperties(content) };
}

/** Degrees of freedom that are not given are as good as known. */
export function toProperties({ errorModel, resolution }: InstrumentPropertiesDto): Properties {
  return {
    errorModel:
      errorModel.kind === 'expandedUncertainty'
        ? { ...errorModel, degreesOfFreedom: errorModel.degreesOfFreedom ?? 'infinite' }
        : { ...errorModel },
    resolution,
  };
}
