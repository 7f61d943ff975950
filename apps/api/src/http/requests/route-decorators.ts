import { withRules } from './route-rules.js';

/** Media types of the body that a route reads instead of JSON, such as `text/csv`; the handler gets the stream. */
export const Consumes = (...mediaTypes: readonly string[]): MethodDecorator =>
  withRules({ consumes: mediaTypes });

/** Media types a route answers with instead of JSON, such as `text/csv`. */
export const Produces = (...mediaTypes: readonly string[]): MethodDecorator =>
  withRules({ produces: mediaTypes });

/** A route whose body may be larger than the general limit. */
export const BodyLimit = (bytes: number): MethodDecorator => withRules({ bodyLimit: bytes });

/** Body limit of bulk routes: a thousand readings fit. */
export const bulkBodyLimit = 2 * 1024 * 1024;
