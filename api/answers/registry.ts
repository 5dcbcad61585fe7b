import * as z from 'zod'

/** Schemas of whole answers, by the name they have in the OpenAPI document. */
const answers = z.registry<{ id: string }>()
const names = new Map<z.ZodType, string>()

/** Names an answer's schema. @example export const BoardAnswer = answer('Board', z.strictObject({ … })) */
export function answer<Schema extends z.ZodType>(name: string, schema: Schema): Schema {
  answers.add(schema, { id: name })
  names.set(schema, name)
  return schema
}

/** Errors: throws for a schema that was never named: a route would be described with nothing. */
export function answerRef(schema: z.ZodType): string {
  const name = names.get(schema)
  if (name === undefined) throw new Error('an answer needs a name: wrap its schema in answer()')
  return `#/components/schemas/${name}`
}

/** All of them as JSON Schema 2020-12, referring to one another. */
export function answerComponents(): Record<string, object> {
  const { schemas } = z.toJSONSchema(answers, { uri: (id) => `#/components/schemas/${id}`, io: 'output', unrepresentable: 'any' })
  return Object.fromEntries(
    Object.entries(schemas).map(([name, schema]) => {
      const { $schema: _schema, $id: _id, ...rest } = schema as Record<string, unknown>
      return [name, rest]
    }),
  )
}
