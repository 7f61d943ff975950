import type { ComebackJobsQuery, ComebackQuestionQuery } from '@endfloat/contracts';
import type { Caller, RateDimension, RateQuery } from '@endfloat/workshop';
import { HttpProblem } from '../../http/index.js';
import type { JobsLink } from './comeback-rates.presenter.js';

const ofPeople: readonly RateDimension[] = ['diagnosedBy', 'fittedBy'];
const ofOthers: readonly RateDimension[] = ['customer', 'fleet', 'supplier'];

/** Comparisons of people are for the owner only; a customer's user is told of no other customer and of no supplier. */
export function refuseForeignDimension(caller: Caller, by: RateDimension | undefined): void {
  if (by === undefined) return;
  if (ofPeople.includes(by) && !caller.roles.includes('owner')) {
    throw new HttpProblem('insufficient-scope', {
      detail: 'Numbers by person are for the owner of the shop only. Ask by another dimension.',
    });
  }
  if (ofOthers.includes(by) && caller.customerId !== undefined) {
    throw new HttpProblem('insufficient-scope', {
      detail: 'This dimension tells of other customers of the shop. Ask by another one.',
    });
  }
}

type Narrowing = Omit<ComebackQuestionQuery, 'against'> & Pick<ComebackJobsQuery, 'by' | 'value' | 'against'>;

/** The question of a query; by a person, only what is attributed to that person's side counts unless told. */
export function toRateQuery(query: Narrowing): RateQuery {
  const { at, asOf, from, until, customerId, symptom, component, action, by } = query;
  const usual = by === 'diagnosedBy' ? 'diagnosis' : by === 'fittedBy' ? 'fitting' : 'anybody';
  const against = query.against ?? usual;
  return {
    at,
    asOf,
    from,
    until,
    customerId,
    symptom,
    component,
    action,
    against: against === 'anybody' ? undefined : against,
  };
}

export const toGroup = ({ by, value }: Pick<ComebackJobsQuery, 'by' | 'value'>): RateQuery['group'] =>
  by === undefined ? undefined : { by, value: value ?? null };

/** The list of the jobs behind a group of the same question. */
export function jobsLink(query: Narrowing, at: string): JobsLink {
  const { against } = toRateQuery(query);
  return (value) => {
    const { asOf, from, until, customerId, symptom, component, action, by } = query;
    const asked = { at, asOf, from, until, customerId, symptom, component, action };
    const entries = Object.entries({
      ...asked,
      against: against ?? 'anybody',
      by: value === undefined ? undefined : by,
      value: value ?? undefined,
    }).flatMap(([name, text]) => (text === undefined ? [] : [[name, text] as [string, string]]));
    return `/v1/comeback-jobs?${new URLSearchParams(entries).toString()}`;
  };
}
