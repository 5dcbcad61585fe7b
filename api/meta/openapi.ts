import type { Hono } from 'hono'
import { generateSpecs } from 'hono-openapi'
import { answerComponents } from '../answers/registry.ts'
import type { Env } from '../context.ts'

export type OpenApi = Awaited<ReturnType<typeof generateSpecs>>

/** The document of every route that is described, from the validators that really guard it. */
export async function openApiOf(app: Hono<Env>): Promise<OpenApi> {
  const specs = await generateSpecs(app, {
    documentation: {
      info: {
        title: 'Driploop',
        version: '1',
        description:
          'Everything the screens do. Amounts are whole minor units of the install’s currency; quantities are in the unit their name ends with.',
      },
      components: { securitySchemes: { session: { type: 'apiKey', in: 'cookie', name: '__Host-driploop' } } },
    },
    defaultValidationErrorResponse: false,
    excludeStaticFile: false,
  })
  return {
    ...specs,
    components: { ...specs.components, schemas: { ...specs.components.schemas, ...answerComponents() } },
  }
}
