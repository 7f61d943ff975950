import type { OpenAPIV3_1 } from 'openapi-types';

type Headers = Record<string, OpenAPIV3_1.HeaderObject | OpenAPIV3_1.ReferenceObject>;

const text = (description: string, pattern: string, maxLength = 256): OpenAPIV3_1.HeaderObject => ({
  description,
  schema: { type: 'string', maxLength, pattern },
});

/** Header fields of answers, each described once. */
export const headerComponents: Record<string, OpenAPIV3_1.HeaderObject> = {
  'Access-Control-Allow-Origin': text('Pages that may read the answer in a browser.', '^\\S+$'),
  'Accept-Encoding': text('Codings of the body that are read here.', '^identity$'),
  'Accept-Patch': text('Media types of the body that PATCH reads here.', '^.+$'),
  'Accept-Post': text('Media types of the body that is read here.', '^.+$'),
  Deprecation: text('From when on the operation is discouraged (RFC 9745).', '^@-?[0-9]+$'),
  ETag: text('Version of the representation; send it back in If-Match or If-None-Match.', '^"[^"]*"$'),
  'Idempotency-Replayed': text('`?1`: this is the answer that was given to this key before.', '^\\?1$', 2),
  Link: text(
    'Address of the next page, none on the last one; and what takes the place of an operation that goes (RFC 8288).',
    '^<[^>]+>; rel="(?:next|deprecation)"',
    8192,
  ),
  Location: text('Where the record stands.', '^\\S+$', 2048),
  'Preference-Applied': text('Which preference was honoured (RFC 7240).', '^return=minimal$'),
  RateLimit: text(
    'What is left of the limit: `"<policy>";r=<requests>;t=<seconds>`.',
    '^"[a-z-]+";r=[0-9]+;t=[0-9]+$',
  ),
  'RateLimit-Policy': text(
    'The limit: `"<policy>";q=<requests>;w=<seconds>`.',
    '^"[a-z-]+";q=[0-9]+;w=[0-9]+$',
  ),
  'Retry-After': text('Seconds to wait before asking again.', '^[0-9]+$', 10),
  Sunset: text('From when on the operation may be gone (RFC 8594).', '^[A-Z][a-z]{2}, .+ GMT$'),
  'WWW-Authenticate': text('What is wrong with the credential (RFC 6750).', '^Bearer .+$'),
};

/** References to header fields by name, with those that every answer carries. */
export function headersNamed(...names: readonly (keyof typeof headerComponents)[]): Headers {
  const all = [...names, 'Access-Control-Allow-Origin', 'RateLimit', 'RateLimit-Policy'];
  return Object.fromEntries(all.map((name) => [name, { $ref: `#/components/headers/${name}` }]));
}
