import type { INestApplication } from '@nestjs/common';
import { DocumentBuilder, SwaggerModule } from '@nestjs/swagger';
import type { OpenAPIV3_1 } from 'openapi-types';
import { finishDocument } from './finish-document.js';
import type { WalkedRoute } from './route-walk.js';

const description = `History and arithmetic of a workshop that keeps older vans on the road: what was measured, what it
means, what to do, and whether it held.

Every refusal is \`application/problem+json\` (RFC 9457); its types are explained under \`/problems\`. Figures that must be
exact are decimal text with a unit. Lists are paged by an opaque cursor. A change needs the version it was made from.
Answers about safety: maker's instructions, local rules and licensed practice come first.`;

/** The OpenAPI document of the interface, built from the routes and classes that serve it. */
export function buildDocument(app: INestApplication, routes: readonly WalkedRoute[]): OpenAPIV3_1.Document {
  const config = new DocumentBuilder()
    .setTitle('Endfloat')
    .setDescription(description)
    .setVersion('0.1.0')
    .setLicense('Apache-2.0', 'https://www.apache.org/licenses/LICENSE-2.0')
    .setOpenAPIVersion('3.1.1')
    .build();
  const built = SwaggerModule.createDocument(app, config, {
    operationIdFactory: (_controller, method) => method,
    autoTagControllers: false,
  });
  // The framework's type of a document is not assignable to the standard one, so it is converted here, once.
  return finishDocument(built as unknown as OpenAPIV3_1.Document, routes);
}
