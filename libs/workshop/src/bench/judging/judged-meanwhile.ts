import { DomainError } from '../../errors/domain.errors.js';

/** Two people recorded readings of one inspection at the same moment, and each judged without the other's. */
export class JudgedMeanwhile extends DomainError {
  constructor() {
    super(
      'record.wrongState',
      'Somebody else recorded a reading of this inspection at the same moment. Nothing of yours was kept; send it again.',
    );
    this.name = 'JudgedMeanwhile';
  }
}

const attempts = 5;

/** Runs a whole transaction again when another one judged the same inspection meanwhile. */
export async function againWhenJudgedMeanwhile<T>(transaction: () => Promise<T>): Promise<T> {
  for (let attempt = 1; ; attempt += 1) {
    try {
      return await transaction();
    } catch (error) {
      if (attempt >= attempts || !(error instanceof JudgedMeanwhile)) throw error;
    }
  }
}
