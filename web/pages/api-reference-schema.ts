import { markup, type Markup } from './markup.ts'
import { schemaAt, type JsonSchema, type OpenApiDocument } from './openapi-document.ts'

/** Deeper than this a shape is named and not written out: a reader follows the document for machines there. */
const MOST_DEPTH = 3

const sayLimit = (schema: JsonSchema): string => {
  const { minimum, maximum, exclusiveMinimum, minLength, maxLength, maxItems } = schema
  const parts = [
    exclusiveMinimum === undefined ? '' : `more than ${exclusiveMinimum}`,
    minimum === undefined ? '' : `at least ${minimum}`,
    maximum === undefined || maximum >= Number.MAX_SAFE_INTEGER ? '' : `at most ${maximum}`,
    minLength === undefined ? '' : `at least ${minLength} characters`,
    maxLength === undefined ? '' : `at most ${maxLength} characters`,
    maxItems === undefined ? '' : `at most ${maxItems} items`,
  ].filter((part) => part !== '')
  return parts.length === 0 ? '' : `, ${parts.join(', ')}`
}

/** The kind of a value in a few words. @example sayType({ type: 'integer', minimum: 1 }) // 'integer, at least 1' */
export function sayType(schema: JsonSchema): string {
  if (schema.$ref !== undefined) return schema.$ref.split('/').at(-1) ?? 'object'
  if (schema.const !== undefined) return JSON.stringify(schema.const)
  if (schema.enum !== undefined) return schema.enum.map((value) => JSON.stringify(value)).join(' or ')
  const choices = schema.anyOf ?? schema.oneOf
  if (choices !== undefined) return [...new Set(choices.map(sayType))].join(' or ')
  if (schema.type === 'array') return `list of ${schema.items === undefined ? 'anything' : sayType(schema.items)}${sayLimit(schema)}`
  const type = Array.isArray(schema.type) ? schema.type.join(' or ') : (schema.type ?? 'anything')
  return `${type}${schema.format === undefined ? '' : ` (${schema.format})`}${sayLimit(schema)}`
}

const resolved = (schema: JsonSchema, openapi: OpenApiDocument): JsonSchema =>
  schema.$ref === undefined ? schema : (schemaAt(openapi, schema.$ref) ?? schema)

/** Shapes inside a schema that have fields of their own: itself, its items, or its choices. */
function shapes(schema: JsonSchema, openapi: OpenApiDocument): JsonSchema[] {
  const whole = resolved(schema, openapi)
  if (whole.properties !== undefined) return [whole]
  if (whole.items !== undefined) return shapes(whole.items, openapi)
  return (whole.anyOf ?? whole.oneOf ?? whole.allOf ?? []).flatMap((choice) =>
    choice.$ref === undefined || schema.$ref !== choice.$ref ? shapes(choice, openapi) : [],
  )
}

/** A value's fields as a list, with kind, limits and whether they may be left out. */
export function schemaOutline(schema: JsonSchema | undefined, openapi: OpenApiDocument, depth = 1): Markup | '' {
  if (schema === undefined) return ''
  const found = depth > MOST_DEPTH ? [] : shapes(schema, openapi)
  const said = markup`<span class="type">${sayType(schema)}</span>`
  if (found.length === 0) return said
  return markup`${depth === 1 ? said : ''}${found.map((shape) => markup`<ul class="fields">${Object.entries(shape.properties ?? {}).map(([name, property]) => fieldRow(name, property, shape, openapi, depth))}</ul>`)}`
}

function fieldRow(name: string, property: JsonSchema, shape: JsonSchema, openapi: OpenApiDocument, depth: number): Markup {
  const optional = shape.required?.includes(name) === true ? '' : ', optional'
  const nested = shapes(property, openapi).length > 0 ? schemaOutline(property, openapi, depth + 1) : ''
  return markup`<li><code>${name}</code> <span class="type">${sayType(property)}${optional}</span>${property.description === undefined ? '' : markup` ${property.description}`}${nested}</li>`
}
