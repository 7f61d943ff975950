import { examineVehicleNumber, modelYearOf, vinCheckDigit, type VehicleMarket } from '@endfloat/catalogue';
import { invalidInput } from '../errors/domain.errors.js';
import { calculated, type CalculationMethod } from './calculation-method.js';

export const vehicleNumbers: CalculationMethod = {
  id: 'vehicle-numbers',
  title: 'Check digit and model year of a vehicle identification number',
  name: 'checkDigitModulo11',
  variant:
    'weights 8 7 6 5 4 3 2 10 0 9 8 7 6 5 4 3 2, sum modulo 11, 10 is X; mandatory in North America only, elsewhere a difference warns; model year by position 10 with the cycle by position 7',
  source: '49 CFR 565.15, tables III, IV, V and VI; ISO 3779',
  caseIds: ['cfr-565-sample-number'],
};

/** Check digit and model year as read; nothing is refused for a wrong digit. */
export function calculateVehicleNumber({
  number,
  market,
}: {
  readonly number: string;
  readonly market?: VehicleMarket | undefined;
}) {
  const { normalised, numberKind, warnings, refusals } = examineVehicleNumber({ asRead: number, market });
  const [refusal] = refusals;
  if (refusal !== undefined) {
    throw invalidInput(
      '/number',
      refusal.code,
      `Characters at ${refusal.values.positions} (${refusal.values.codePoints}) are none of a vehicle number.`,
    );
  }
  return calculated(vehicleNumbers, 1, {
    normalised,
    numberKind,
    checkDigit: vinCheckDigit(normalised),
    modelYear: modelYearOf(normalised),
    warnings: warnings.map(({ code }) => code),
  });
}
