import type { ShopSettings } from '../ports/records/shop.records.js';
import { watchWindowTerms } from './watch-window-terms.js';

const settings = {
  comebackWindowDays: 90,
  comebackWindowKm: '5000',
  comebackFamilyWindows: [
    { familyId: 'stalling', days: 180, km: '4000' },
    { familyId: 'overrun', days: 30, km: '1000' },
  ],
} as unknown as ShopSettings;
const complaint = (symptoms: Record<string, 'present' | 'absent'>) => ({ symptoms });

describe('watch window of a released job', () => {
  it('is the usual one of the shop without a coded complaint, and for a family without its own', () => {
    expect(watchWindowTerms(settings, [])).toEqual({ windowDays: 90, windowKm: '5000' });
    expect(watchWindowTerms(settings, [complaint({ 'idle-rises-with-ac': 'present' })])).toEqual({
      windowDays: 90,
      windowKm: '5000',
    });
  });

  it('is the one of the family, also where it is shorter, and a symptom that is absent counts for nothing', () => {
    const stalls = complaint({ 'stalls-cold': 'present', 'idle-rises-with-ac': 'absent' });
    expect(watchWindowTerms(settings, [stalls])).toEqual({ windowDays: 180, windowKm: '4000' });
  });

  it('is the longest days and the longest distance of several families', () => {
    const both = [complaint({ 'stalls-cold': 'present' }), complaint({ 'idle-rises-with-ac': 'present' })];
    expect(watchWindowTerms(settings, both)).toEqual({ windowDays: 180, windowKm: '5000' });
  });

  it('is the usual one in settings that were written before families had their own', () => {
    const before: ShopSettings = { ...settings };
    delete (before as { comebackFamilyWindows?: unknown }).comebackFamilyWindows;
    expect(watchWindowTerms(before, [complaint({ 'stalls-cold': 'present' })])).toEqual({
      windowDays: 90,
      windowKm: '5000',
    });
  });
});
