import { Controller, Get } from '@nestjs/common';
import {
  CauseList,
  OperatingConditionList,
  ProofPointDefinitionList,
  QuantityKindList,
  SymptomList,
} from '@endfloat/contracts';
import { causes, operatingConditions, proofPoints, quantityKindUnits, symptoms } from '@endfloat/workshop';
import { Allow, Answer } from '../../http/index.js';

const everybody = ['owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor'] as const;

/** Lists of the catalogue, for forms. */
@Controller('v1')
export class CatalogueListsController {
  @Get('symptoms')
  @Allow(...everybody)
  @Answer(SymptomList, { summary: 'List the coded symptoms' })
  listSymptoms(): SymptomList {
    return {
      items: symptoms.map(({ id, name, familyId, customerSays, ask }) => ({
        id,
        name,
        familyId,
        customerSays: [...customerSays],
        ask: [...ask],
      })),
    };
  }

  @Get('causes')
  @Allow(...everybody)
  @Answer(CauseList, { summary: 'List the causes a job may establish' })
  listCauses(): CauseList {
    return {
      items: causes.map(({ id, name, forCustomer, partsCostClass, openRemainder }) => ({
        id,
        name,
        forCustomer,
        partsCostClass,
        openRemainder,
      })),
    };
  }

  @Get('proof-points')
  @Allow(...everybody)
  @Answer(ProofPointDefinitionList, { summary: 'List the points that prove a job' })
  listProofPointDefinitions(): ProofPointDefinitionList {
    return {
      items: proofPoints.map(({ id, kind, title, passWhen, dueAfter }) => ({
        id,
        kind,
        title,
        passWhen,
        dueAfter,
      })),
    };
  }

  @Get('operating-conditions')
  @Allow(...everybody)
  @Answer(OperatingConditionList, { summary: 'List the circumstances of a complaint' })
  listOperatingConditions(): OperatingConditionList {
    return {
      items: operatingConditions.map(({ id, label, kind, choices, quantityKind }) => ({
        id,
        label,
        kind,
        choices: [...choices],
        quantityKind,
      })),
    };
  }

  @Get('units')
  @Allow(...everybody)
  @Answer(QuantityKindList, { summary: 'List the kinds of quantity with their units' })
  listUnits(): QuantityKindList {
    return { items: quantityKindUnits.map((each) => ({ ...each, units: [...each.units] })) };
  }
}
