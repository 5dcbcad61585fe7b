import type { OpenApiDocument } from '../../../web/pages/openapi-document.ts'

/** A document of two operations that holds each thing the reference page reads. */
export const sampleOpenApi: OpenApiDocument = {
  info: { title: 'Driploop API', version: '1' },
  paths: {
    '/api/sightings': {
      post: {
        summary: 'Post a sighting',
        requestBody: { content: { 'application/json': { schema: { $ref: '#/components/schemas/Sighting' } } } },
        responses: { 201: { description: 'Taken', content: { 'application/json': { schema: { type: 'object', properties: { id: { type: 'string' } } } } } }, 422: { description: 'Refused <b>', content: { 'application/problem+json': {} } } },
      },
    },
    '/api/board': { get: { parameters: [{ name: 'limit', in: 'query', schema: { type: 'integer', minimum: 1, maximum: 100 } }], responses: { 200: { description: 'Rows' } } } },
  },
  components: {
    schemas: {
      Sighting: { type: 'object', required: ['priceMinor'], properties: { priceMinor: { type: 'integer', minimum: 1 },
          count: { type: 'integer', minimum: Number.MIN_SAFE_INTEGER }, note: { type: 'string', maxLength: 500 }, kitParts: { type: 'array', items: { type: 'object', properties: { productId: { type: 'string' } } } } } },
      Tree: { type: 'object', properties: { child: { $ref: '#/components/schemas/Tree' } } },
    },
  },
} // prettier-ignore
