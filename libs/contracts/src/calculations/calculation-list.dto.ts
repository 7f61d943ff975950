import { caseProvenances, type CaseProvenance } from '@endfloat/metrology';
import { FlagField, ListField, NestedField, NumberField, TextField } from '../fields/index.js';
import { CalculationMethodDto } from './calculation.dto.js';

export class CaseFigureDto {
  @TextField({ description: 'Name of the figure.', max: 80 })
  name!: string;

  @NumberField({ description: 'What it should be.' })
  expected!: number;

  @NumberField({ description: 'What it came to at this request.' })
  computed!: number;

  @NumberField({ description: 'How far the two may lie apart.', min: 0 })
  allowed!: number;

  @FlagField({ description: 'Whether they lie no farther apart.' })
  isReproduced!: boolean;
}

export class PublishedCaseDto {
  @TextField({ description: 'Id of the case.', max: 80 })
  id!: string;

  @TextField({ description: 'What it is about.', max: 200 })
  title!: string;

  @TextField({ description: 'Where it stands.', max: 400 })
  source!: string;

  @ListField({
    description:
      'Where the expected figures were seen: in the source, by another library, remembered, or worked out by hand.',
    max: 4,
    choice: { values: caseProvenances, enumName: 'CaseProvenance' },
  })
  provenance!: readonly CaseProvenance[];

  @TextField({ description: 'The input in words.', max: 600 })
  input!: string;

  @FlagField({ description: 'Whether every figure was reproduced at this request.' })
  isReproduced!: boolean;

  @ListField({ description: 'Its figures, computed anew.', max: 100, type: () => CaseFigureDto })
  figures!: readonly CaseFigureDto[];
}

export class CalculationListItem {
  @TextField({ description: 'Last part of its address.', max: 80 })
  id!: string;

  @TextField({ description: 'Where to send data.', max: 120, example: '/v1/calculations/life-fits' })
  address!: string;

  @TextField({ description: 'The question it answers.', max: 200 })
  title!: string;

  @NestedField({
    description: 'Method, variant and source of the formula.',
    type: () => CalculationMethodDto,
  })
  method!: CalculationMethodDto;

  @ListField({
    description: 'Published cases, run again at this request.',
    max: 100,
    type: () => PublishedCaseDto,
  })
  cases!: readonly PublishedCaseDto[];
}

export class CalculationList {
  @FlagField({ description: 'Whether every case of every calculation was reproduced at this request.' })
  areAllReproduced!: boolean;

  @ListField({ description: 'The calculations.', max: 200, type: () => CalculationListItem })
  items!: readonly CalculationListItem[];
}
