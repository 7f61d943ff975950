import { runPublishedCase } from '@endfloat/metrology';
import { diagnosisPublishedCases } from './diagnosis-published-cases.js';

describe('published cases of diagnosis', () => {
  it.each(diagnosisPublishedCases.map((publishedCase) => [publishedCase.id, publishedCase] as const))(
    '%s is reproduced to its tolerance',
    (_id, publishedCase) => {
      expect(runPublishedCase(publishedCase).figures.filter(({ isReproduced }) => !isReproduced)).toEqual([]);
    },
  );
});
