import { symptomFamilies } from '@endfloat/catalogue';
import type { WorkAction, WorkLine } from '../ports/records/jobs.records.js';

const familyOrder: readonly string[] = symptomFamilies.map(({ id }) => id);
/** The work that makes a job what it is, the heaviest first; judgement. */
const actionOrder: readonly WorkAction[] = [
  'replace',
  'reBush',
  'replaceSwitch',
  'repairWiring',
  'adjustStop',
  'adjustSwitch',
  'freeLinkage',
  'clean',
  'other',
];

/** What a fair comparison takes as like: family of the complaint, and the component of the heaviest work. */
export function mixOf(families: readonly string[], done: readonly WorkLine[]): string {
  const family = familyOrder.find((id) => families.includes(id)) ?? 'noSymptomCoded';
  const heaviest = [...done].sort(
    (a, b) =>
      actionOrder.indexOf(a.action) - actionOrder.indexOf(b.action) ||
      (a.componentType < b.componentType ? -1 : 1),
  )[0];
  return `${family}/${heaviest?.componentType ?? 'noWork'}`;
}

/** Whole years between a day and the day of an instant (UTC); null where unknown or the other way round. */
export function ageAt(firstUsedOn: string | null, at: string): number | null {
  if (firstUsedOn === null) return null;
  const day = new Date(at).toISOString().slice(0, 10);
  if (firstUsedOn > day) return null;
  const years = Number(day.slice(0, 4)) - Number(firstUsedOn.slice(0, 4));
  return day.slice(4) < firstUsedOn.slice(4) ? years - 1 : years;
}

/** Exact sum of two decimal texts that are not negative, without zeros behind it. */
export function exactSum(a: string, b: string): string {
  const decimals = Math.max(a.split('.')[1]?.length ?? 0, b.split('.')[1]?.length ?? 0);
  const units = (text: string): bigint => {
    const [whole = '0', fraction = ''] = text.split('.');
    return BigInt(whole + fraction.padEnd(decimals, '0'));
  };
  const digits = (units(a) + units(b)).toString().padStart(decimals + 1, '0');
  const text =
    decimals === 0 ? digits : `${digits.slice(0, digits.length - decimals)}.${digits.slice(-decimals)}`;
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}
