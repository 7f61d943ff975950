import { symptomFamilies, symptoms } from '@endfloat/catalogue';

/** What a symptom, or a family of symptoms, is called, by id. */
export const symptomNames: ReadonlyMap<string, string> = new Map(
  [...symptoms, ...symptomFamilies].map(({ id, name }) => [id, name]),
);
