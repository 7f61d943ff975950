export * from './evidence/evidence-tag.js';
export * from './complaints/symptom.js';
export * from './complaints/symptoms.js';
export * from './complaints/symptom-families.js';
export * from './complaints/causes.js';
export * from './complaints/operating-conditions.js';
export * from './comebacks/comeback-attributions.js';
export * from './parts/part-conditions.js';
export * from './road-test/road-test-point.js';
export * from './road-test/road-test-points.js';
export * from './road-test/mandatory-road-test-points.js';
export * from './proof/proof-points.js';
export * from './trouble-codes/trouble-codes.js';
export * from './trouble-codes/read-trouble-code.js';
export * from './cautions/hazard.js';
export * from './cautions/cautions.js';
export * from './cautions/implied-hazards.js';
export * from './component-types/component-type.js';
export * from './component-types/shipped-component-types.js';
export * from './check-sheets/check-sheet.js';
export * from './check-sheets/shipped-check-sheets.js';
export * from './check-sheets/throttle-housing/throttle-housing.check-sheet.js';
export * from './limits/throttle-housing.limits.js';
export * from './vehicle-numbers/index.js';
export * from './check-sheets/checks-downstream-of.js';
export {
  jurisdictions,
  type JurisdictionId,
  type PublishedLimit,
} from './limits/published/published-limit.js';
export * from './limits/published/published-limits.js';
export * from './limits/published/find-published-limit.js';
export * from './diagnosis-tables/diagnosis-tables-shape.js';
export * from './diagnosis-tables/shipped-diagnosis-tables.js';
export * from './validation/data-issue.js';
export * from './validation/parse-component-type.js';
export * from './validation/parse-check-sheet.js';
export * from './texts/text-templates.js';
export * from './texts/render-text.js';
