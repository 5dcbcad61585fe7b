/** The parts of an OpenAPI 3.1 document that the reference page reads. Anything more in it is left alone. */
export interface OpenApiDocument {
  info?: { title?: string; version?: string; description?: string }
  paths?: Record<string, Record<string, unknown> | undefined>
  components?: { schemas?: Record<string, unknown> }
}
export interface Operation {
  summary?: string
  description?: string
  tags?: string[]
  /** Least role that may ask; "public" needs no session. */
  'x-role'?: string
  parameters?: Parameter[]
  requestBody?: { required?: boolean; content?: Record<string, Media | undefined> }
  responses?: Record<string, Answer | undefined>
}
export interface Parameter {
  name?: string
  in?: string
  required?: boolean
  description?: string
  schema?: JsonSchema
}
interface Media {
  schema?: JsonSchema
}
export interface Answer {
  description?: string
  content?: Record<string, Media | undefined>
}
export interface JsonSchema {
  $ref?: string
  type?: string | string[]
  format?: string
  description?: string
  enum?: unknown[]
  const?: unknown
  minimum?: number
  maximum?: number
  exclusiveMinimum?: number
  minLength?: number
  maxLength?: number
  maxItems?: number
  properties?: Record<string, JsonSchema>
  required?: string[]
  items?: JsonSchema
  anyOf?: JsonSchema[]
  oneOf?: JsonSchema[]
  allOf?: JsonSchema[]
}

export const METHODS = ['get', 'post', 'put', 'patch', 'delete'] as const

export interface ListedOperation {
  method: (typeof METHODS)[number]
  path: string
  operation: Operation
}

const isObject = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null && !Array.isArray(value)

/** Every operation, paths in order, methods in the order above. */
export function operationsOf(openapi: OpenApiDocument): ListedOperation[] {
  return Object.entries(openapi.paths ?? {})
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([path, item]) =>
      METHODS.flatMap((method) => {
        const operation: unknown = item?.[method]
        return isObject(operation) ? [{ method, path, operation }] : []
      }),
    )
}

/** The shapes with a name of their own, in order of their names. */
export const shapesOf = (openapi: OpenApiDocument): Array<{ name: string; schema: JsonSchema }> =>
  Object.entries(openapi.components?.schemas ?? {})
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([name, schema]) => (isObject(schema) ? [{ name, schema }] : []))
