/** Media type of the catalogue (RFC 9727). */
export const catalogueMediaType = 'application/linkset+json';

/** Where a program finds the document, a person the reference, and both the guarantees (RFC 9727, RFC 8631). */
export const apiCatalog = {
  linkset: [
    {
      anchor: '/v1',
      'service-desc': [{ href: '/openapi.json', type: 'application/json' }],
      'service-doc': [
        { href: '/docs', type: 'text/html', title: 'Reference' },
        { href: '/docs/guarantees', type: 'text/html', title: 'Guarantees and their limits' },
        { href: '/problems', type: 'text/html', title: 'Problem types' },
      ],
      status: [{ href: '/readyz', type: 'application/json' }],
    },
  ],
} as const;
