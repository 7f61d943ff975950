import { DomainError } from '../errors/domain.errors.js';

const attempts = 5;

/**
 * Runs a whole transaction again when an id, or a number given in turn, was taken between its looking and its writing.
 * The same request sent twice at once then finds the first one; what is really taken by something else is refused again.
 *
 * @throws DomainError `record.idTaken` when it is still taken after a few runs
 */
export async function againWhenTaken<T>(transaction: () => Promise<T>): Promise<T> {
  for (let attempt = 1; ; attempt += 1) {
    try {
      return await transaction();
    } catch (error) {
      const isTaken = error instanceof DomainError && error.code === 'record.idTaken';
      if (attempt >= attempts || !isTaken) throw error;
    }
  }
}
