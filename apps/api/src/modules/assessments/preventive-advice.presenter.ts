import type { PreventiveAdviceDto } from '@endfloat/contracts';
import type { PreventiveAdvice } from '@endfloat/workshop';

const method =
  'Chance of having reached the criterion along the wear trend of this part, or by the look-ahead of the assessment where its readings show none yet; looked at again at 10 %, or where readings are worth their cost; replaced ahead at 50 % by the next visit (both judgement).';

/** Advice ahead of the next complaint, with the same in words. */
export function presentAdvice(advice: PreventiveAdvice): PreventiveAdviceDto {
  const { kind, basis = null, withinKm, chance, optionId, needed, got } = advice;
  return { kind, basis, withinKm, chance, optionId, needed, got, method, detail: inWords(advice) };
}

function inWords(advice: PreventiveAdvice): string {
  const { kind, withinKm, chance, needed, got } = advice;
  if (advice.basis === 'suchParts') return byLookAhead(advice);
  const percent = chance === null ? '-' : `${String(Math.round(chance * 100))} %`;
  const km = `${String(withinKm)} km`;
  const visit = withinKm === null ? 'the next planned visit' : `the next planned visit, in ${km}`;
  switch (kind) {
    case 'leaveUntilRecheck':
      return `The part may stay in. Measure it again within ${km}: by then the chance that it has reached the criterion is ${percent}.`;
    case 'recheckAtNextVisit':
      return `The part may stay in until ${visit}; measure it again then. By then the chance that it has reached the criterion is ${percent}.`;
    case 'recheckSoon':
      return `The part may have reached the criterion already or will soon: measure it again within ${km}, and earlier if anything changes.`;
    case 'replaceAtNextVisit':
      return `Order the part ahead and renew it at ${visit}: the chance that it has reached the criterion is ${percent}. Earlier if a complaint comes up.`;
    case 'dangerFirst':
      return 'A dangerous finding is open: put it right and prove it before anything is advised about wear.';
    case 'measureFirst':
      return 'Take the further readings first; what to do ahead follows from them.';
    case 'renewNow':
      return 'Renew the part at this visit.';
    case 'notEnoughKnown':
      return `How fast it wears cannot be told yet from ${inspections(got)}; at least ${String(needed)} are needed. Measure it again at the next visit.`;
  }
}

const inspections = (count: number): string =>
  count === 1 ? '1 inspection' : `${String(count)} inspections`;

/** Where the part's own readings show no wear that could be followed. */
function byLookAhead({ kind, withinKm, chance, got }: PreventiveAdvice): string {
  const why = `${got === 0 ? 'No inspection' : inspections(got)} of this part ${got === 0 ? 'shows' : got === 1 ? 'does not show' : 'do not show'} yet how fast it wears; by what is known of such parts`;
  const km = `${String(withinKm)} km`;
  if (kind === 'replaceAtNextVisit')
    return `${why}, order one ahead and renew it at the planned visit in ${km}: from there on that is expected to cost less than going on.`;
  return chance === null
    ? `The part may stay in. ${why}, nothing is gained by measuring it again before ${km}.`
    : `The part may stay in. ${why}, measure it again within ${km}: by then the chance that it has reached the criterion is ${String(Math.round(chance * 100))} %.`;
}
