import type { Reply, TestApi, TestShop, TestUser } from '../support/api.js';

/** What a parts person of an invented shop does, in short words. */
export interface PartsDesk {
  readonly as: TestUser;
  post(url: string, body: object, as?: TestUser): Promise<Reply>;
  get(url: string, as?: TestUser): Promise<Reply>;
  part(partNumber: string, more?: object): Promise<string>;
  move(partId: string, kind: string, quantity: number, more?: object): Promise<Reply>;
  offer(partId: string | null, more?: object): Promise<string>;
  /** an order that was promised and came after so many days, or did not come yet */
  delivery(
    offerId: string,
    orderedOn: string,
    promisedOn: string | null,
    arrivedOn: string | null,
    more?: object,
  ): Promise<string>;
}

export function openPartsDesk(api: TestApi, shop: TestShop, as: TestUser = shop.owner): PartsDesk {
  const post: PartsDesk['post'] = (url, body, who = as) => api.call('POST', url, { as: who, body });
  const made = async (url: string, body: object): Promise<string> => {
    const answer = await post(url, body);
    if (answer.status !== 201) throw new Error(JSON.stringify(answer.body));
    return answer.body.id as string;
  };
  return {
    as,
    post,
    get: (url, who = as) => api.call('GET', url, { as: who }),
    part: (partNumber, more = {}) =>
      made('/v1/parts', {
        componentType: 'throttle-housing',
        partNumber,
        title: 'throttle housing',
        applications: [],
        supersededById: null,
        interchangesWith: [],
        alsoOrder: [],
        note: null,
        ...more,
      }),
    move: (partId, kind, quantity, more = {}) =>
      post('/v1/stock-moves', {
        partId,
        condition: 'remanufactured',
        kind,
        quantity,
        happenedAt: api.clock.now(),
        ...more,
      }),
    offer: (partId, more = {}) =>
      made('/v1/offers', {
        componentType: 'throttle-housing',
        condition: 'remanufactured',
        supplier: 'Birchmoor Castings',
        partNumber: null,
        price: { amount: '310.00', currency: 'EUR' },
        coreDeposit: null,
        promisedLeadDays: 9,
        warrantyMonths: 12,
        validUntil: null,
        partId,
        ...more,
      }),
    delivery: (offerId, orderedOn, promisedOn, arrivedOn, more = {}) =>
      made(`/v1/offers/${offerId}/deliveries`, { orderedOn, promisedOn, arrivedOn, ...more }),
  };
}
