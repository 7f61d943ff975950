import { symptoms } from '@endfloat/catalogue';
import type { Complaint, Release } from '../ports/records/jobs.records.js';
import type { ShopSettings } from '../ports/records/shop.records.js';

/**
 * How long a released job is watched: the window of the family of each complaint that it cured, or the shop's usual one
 * for a family without its own and for a job without a coded complaint. Of several the longest days and the longest
 * distance, so that no complaint's window ends before its time.
 */
export function watchWindowTerms(
  settings: ShopSettings,
  complaints: readonly Pick<Complaint, 'symptoms'>[],
): Pick<Release, 'windowDays' | 'windowKm'> {
  const usual = { days: settings.comebackWindowDays, km: settings.comebackWindowKm };
  const families = new Set(
    complaints.flatMap((complaint) =>
      symptoms.filter(({ id }) => complaint.symptoms[id] === 'present').map(({ familyId }) => familyId),
    ),
  );
  const own = settings.comebackFamilyWindows ?? [];
  const windows = [...families].map((family) => own.find(({ familyId }) => familyId === family) ?? usual);
  const counted = windows.length === 0 ? [usual] : windows;
  return {
    windowDays: Math.max(...counted.map(({ days }) => days)),
    windowKm: counted.reduce(
      (longest, { km }) => (Number(km) > Number(longest) ? km : longest),
      counted[0]!.km,
    ),
  };
}
