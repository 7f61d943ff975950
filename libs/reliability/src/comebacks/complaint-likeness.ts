/** What two complaints have in common. */
export interface ComplaintLikeness {
  readonly sharedSymptoms: readonly string[];
  /** symptoms present in one and asked in the other */
  readonly comparedSymptoms: readonly string[];
  /** families present in both without a shared symptom of that family */
  readonly sharedFamilies: readonly string[];
  readonly sharedComponents: readonly string[];
  /** 0 to 1 */
  readonly score: number;
}

const unique = (ids: readonly string[]): string[] => [...new Set(ids)].sort();

/**
 * How alike a complaint is to what an earlier job was about: 1 - (1 - 0.6 s)(1 - 0.3 f)(1 - 0.3 c), judgement.
 *
 * s = shared symptoms / (shared + present then and absent now + present now and not then). A symptom present then that was
 * not asked now counts neither way; s is 0 where nothing can be compared. f is 1 where a family is shared without a
 * shared symptom of it, c where a component is shared; else 0.
 *
 * @param now       the complaint: answers by symptom, components it points to
 * @param then      the earlier job: symptoms that were present, components worked on
 * @param familyOf  family of a symptom; a symptom without one is alike only to itself
 * @returns what is shared, sorted, and the score
 * @source judgement
 */
export function complaintLikeness(
  now: {
    readonly symptoms: Readonly<Record<string, 'present' | 'absent'>>;
    readonly components: readonly string[];
  },
  then: { readonly symptomsPresent: readonly string[]; readonly components: readonly string[] },
  familyOf: Readonly<Record<string, string>>,
): ComplaintLikeness {
  const presentNow = unique(Object.keys(now.symptoms).filter((id) => now.symptoms[id] === 'present'));
  const presentThen = unique(then.symptomsPresent);
  const sharedSymptoms = presentNow.filter((id) => presentThen.includes(id));
  const comparedSymptoms = unique([
    ...presentNow,
    ...presentThen.filter((id) => now.symptoms[id] !== undefined),
  ]);
  const familiesOf = (ids: readonly string[]) => unique(ids.flatMap((id) => familyOf[id] ?? []));
  const settled = familiesOf(sharedSymptoms);
  const familiesThen = familiesOf(presentThen);
  const sharedFamilies = familiesOf(presentNow).filter(
    (id) => familiesThen.includes(id) && !settled.includes(id),
  );
  const sharedComponents = unique(now.components).filter((id) => then.components.includes(id));
  const symptoms = comparedSymptoms.length === 0 ? 0 : sharedSymptoms.length / comparedSymptoms.length;
  const family = sharedFamilies.length > 0 ? 1 : 0;
  const component = sharedComponents.length > 0 ? 1 : 0;
  const score = 1 - (1 - 0.6 * symptoms) * (1 - 0.3 * family) * (1 - 0.3 * component);
  return { sharedSymptoms, comparedSymptoms, sharedFamilies, sharedComponents, score };
}
