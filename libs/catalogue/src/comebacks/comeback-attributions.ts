/** Why a confirmed comeback happened; a separate, later, human decision that can be revised. */
export const comebackAttributions = [
  'noRootCauseFound',
  'wrongRootCause',
  'workmanship',
  'partDefective',
  'partWrong',
  'writeUpPoor',
  'intermittentNotReproduced',
  'recommendedWorkDeclined',
  'newUnrelatedFault',
  'operatingFuelTampering',
] as const;
export type ComebackAttribution = (typeof comebackAttributions)[number];

/** Whose process an attributed comeback counts against. */
export const comebackCountsAgainst = [
  'diagnosis',
  'fitting',
  'supplier',
  'parts',
  'intake',
  'nobody',
] as const;
export type ComebackCountsAgainst = (typeof comebackCountsAgainst)[number];

export interface ComebackAttributionDefinition {
  readonly id: ComebackAttribution;
  readonly meaning: string;
  readonly countsAgainst: ComebackCountsAgainst;
  /** true where the comeback enters a fair comparison of people, parts or suppliers */
  readonly attributable: boolean;
}

const define = (
  id: ComebackAttribution,
  meaning: string,
  countsAgainst: ComebackCountsAgainst,
): ComebackAttributionDefinition => ({
  id,
  meaning,
  countsAgainst,
  attributable: countsAgainst !== 'nobody',
});

/** The ten classes; judgement. */
export const comebackAttributionDefinitions: readonly ComebackAttributionDefinition[] = [
  define('noRootCauseFound', 'the symptom was treated and the cause not established', 'diagnosis'),
  define('wrongRootCause', 'a part was replaced and the complaint stayed the same', 'diagnosis'),
  define('workmanship', 'a hose left off, the switch not set after the stop was moved', 'fitting'),
  define('partDefective', 'a new or remanufactured part failed', 'supplier'),
  define('partWrong', 'wrong variant, old stock, or a used part fitted without measuring it', 'parts'),
  define('writeUpPoor', 'the complaint or its conditions were lost at the desk', 'intake'),
  define('intermittentNotReproduced', 'released with the fault not shown', 'nobody'),
  define('recommendedWorkDeclined', 'the customer declined the recommended repair', 'nobody'),
  define('newUnrelatedFault', 'a proven different cause', 'nobody'),
  define('operatingFuelTampering', 'fuel, use, or a setting moved by others', 'nobody'),
];
