import { Controller, Get, Query } from '@nestjs/common';
import type { OpenAPIV3_1 } from 'openapi-types';
import { PageQuery, pageOf, TextField } from '@endfloat/contracts';
import { openTrial, type Trial } from '../../../../test/support/http.js';
import { Allow, Answer, Pager, Retiring } from './index.js';

class RetiringThing {
  @TextField({ description: 'Name.', max: 20 })
  name!: string;
}
class RetiringPage extends pageOf(() => RetiringThing) {}

const retirement = {
  deprecatedAt: '2031-01-01T00:00:00Z',
  sunsetAt: '2031-07-01T00:00:00Z',
  link: 'https://docs.example.com/moving-on',
};

@Controller('v1/retiring-things')
class RetiringController {
  constructor(private readonly pager: Pager) {}

  @Get()
  @Allow('owner')
  @Retiring(retirement)
  @Answer(RetiringPage, { summary: 'List things of an operation that goes' })
  listRetiringThings(@Query() query: PageQuery): RetiringPage {
    this.pager.read(query);
    return this.pager.page({ items: ['lamp'], next: { sortValue: 'lamp', id: 'lamp' } }, (name) => ({
      name,
    }));
  }

  @Get('staying')
  @Allow('owner')
  @Answer(RetiringThing, { summary: 'Show a thing of an operation that stays' })
  getStayingThing(): RetiringThing {
    return { name: 'lamp' };
  }
}

describe('K5: an operation that goes', () => {
  let trial: Trial;
  beforeAll(async () => {
    trial = await openTrial([RetiringController]);
  });
  afterAll(() => trial.app.close());

  it('says so in every answer (RFC 9745, RFC 8594), beside the link to the next page, and in refusals', async () => {
    const answer = await trial.request({ method: 'GET', url: '/v1/retiring-things', headers: trial.owner });
    // 2031-01-01T00:00:00Z is 61 years after 1970 with 15 leap days: (61 * 365 + 15) * 86,400 s.
    expect(answer.headers['deprecation']).toBe(`@${String((61 * 365 + 15) * 86_400)}`);
    expect(answer.headers['sunset']).toBe('Tue, 01 Jul 2031 00:00:00 GMT');
    expect(answer.headers['link']).toMatch(
      /^<https:\/\/docs\.example\.com\/moving-on>; rel="deprecation", <[^>]+>; rel="next"$/,
    );
    const refused = await trial.request({
      method: 'GET',
      url: '/v1/retiring-things',
      headers: { ...trial.owner, accept: 'image/png' },
    });
    expect([refused.status, refused.headers['sunset']]).toEqual([406, 'Tue, 01 Jul 2031 00:00:00 GMT']);
  });

  it('is marked in the document; one that stays is not, and says nothing', async () => {
    const { body } = await trial.request({ method: 'GET', url: '/openapi.json' });
    const { paths = {} } = body as OpenAPIV3_1.Document;
    expect(paths['/v1/retiring-things']?.get?.deprecated).toBe(true);
    expect(paths['/v1/retiring-things/staying']?.get?.deprecated).toBeUndefined();
    const answer = await trial.request({
      method: 'GET',
      url: '/v1/retiring-things/staying',
      headers: trial.owner,
    });
    expect([answer.headers['deprecation'], answer.headers['sunset']]).toEqual([undefined, undefined]);
  });

  it('cannot end earlier than six months after it was discouraged', () => {
    expect(() => Retiring({ ...retirement, sunsetAt: '2031-06-01T00:00:00Z' })).toThrow(RangeError);
    expect(() => Retiring({ ...retirement, sunsetAt: 'soon' })).toThrow(RangeError);
  });

  it('lists to pages of other origins what is given and heeded, and nothing else', async () => {
    const { body } = await trial.request({ method: 'GET', url: '/openapi.json' });
    const known = new Set([
      ...Object.keys((body as OpenAPIV3_1.Document).components?.headers ?? {}),
      // Of files, of OPTIONS, of an operation that goes, and of what is sent again.
      ...['Content-Disposition', 'Accept-Patch', 'Accept-Post', 'Deprecation', 'Sunset', 'Location'],
      ...['Idempotency-Replayed', 'Preference-Applied'],
    ]);
    const answer = await trial.request({ method: 'OPTIONS', url: '/v1/retiring-things' });
    const exposed = String(answer.headers['access-control-expose-headers']).split(', ');
    expect(exposed.filter((name) => !known.has(name))).toEqual([]);
    expect(String(answer.headers['access-control-allow-headers']).split(', ').sort()).toEqual([
      'Authorization',
      'Content-Type',
      'Idempotency-Key',
      'If-Match',
      'If-None-Match',
      'Prefer',
      'traceparent',
    ]);
  });
});
