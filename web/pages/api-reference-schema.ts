import { markup, type Markup } from './markup.ts'
import type { JsonSchema, OpenApiDocument } from './openapi-document.ts'

/** Deeper than this a shape is named and not written out: a reader follows the document for machines there. */
const MOST_DEPTH = 3

const sayLimit = (schema: JsonSchema): string => {
  const { minimum, maximum, exclusiveMinimum, minLength, maxLength, maxItems } = schema
  const parts = [
    exclusiveMinimum === undefined ? '' : `more than ${exclusiveMinimum}`,
    minimum === undefined || minimum <= Number.MIN_SAFE_INTEGER ? '' : `at least ${minimum}`,
    maximum === undefined || maximum >= Number.MAX_SAFE_INTEGER ? '' : `at most ${maximum}`,
    minLength === undefined || minLength === 0 ? '' : `at least ${minLength} characters`,
    maxLength === undefined ? '' : `at most ${maxLength} characters`,
    maxItems === undefined ? '' : `at most ${maxItems} items`,
  ].filter((part) => part !== '')
  return parts.length === 0 ? '' : `, ${parts.join(', ')}`
}

/** The kind of a value in a few words. @example sayType({ type: 'integer', minimum: 1 }) // 'integer, at least 1' */
export function sayType(schema: JsonSchema): string {
  if (schema.$ref !== undefined) return nameOf(schema.$ref)
  if (schema.const !== undefined) return JSON.stringify(schema.const)
  if (schema.enum !== undefined) return schema.enum.map((value) => JSON.stringify(value)).join(' or ')
  const choices = schema.anyOf ?? schema.oneOf
  if (choices !== undefined) return [...new Set(choices.map(sayType))].join(' or ')
  if (schema.type === 'array') return `list of ${schema.items === undefined ? 'anything' : sayType(schema.items)}${sayLimit(schema)}`
  const type = Array.isArray(schema.type) ? schema.type.join(' or ') : (schema.type ?? 'anything')
  return `${type}${schema.format === undefined ? '' : ` (${schema.format})`}${sayLimit(schema)}`
}

const nameOf = (reference: string): string => reference.split('/').at(-1) ?? 'object'

/** The shape's place on the page. */
export const shapeAnchor = (name: string): string => `shape-${name}`

/** Shapes without a name inside a value: itself, its items, its choices. A named one is written out once, under its own heading. */
function unnamedShapes(schema: JsonSchema): JsonSchema[] {
  if (schema.$ref !== undefined) return []
  if (schema.properties !== undefined) return [schema]
  if (schema.items !== undefined) return unnamedShapes(schema.items)
  return (schema.anyOf ?? schema.oneOf ?? schema.allOf ?? []).flatMap(unnamedShapes)
}

/** The names a value's kind mentions. */
function namesIn(schema: JsonSchema): string[] {
  if (schema.$ref !== undefined) return [nameOf(schema.$ref)]
  const inside = [...(schema.items === undefined ? [] : [schema.items]), ...(schema.anyOf ?? schema.oneOf ?? schema.allOf ?? [])]
  return [...new Set(inside.flatMap(namesIn))]
}

/** The kind in words; a shape with a heading of its own is a link to it. */
function kind(schema: JsonSchema, openapi: OpenApiDocument): Markup {
  const said = sayType(schema)
  const [name, ...others] = namesIn(schema).filter((each) => openapi.components?.schemas?.[each] !== undefined)
  if (name === undefined || others.length > 0) return markup`<span class="type">${said}</span>`
  const [before = '', after = ''] = said.split(name)
  return markup`<span class="type">${before}<a href="#${shapeAnchor(name)}">${name}</a>${after}</span>`
}

/** A value's kind and, where it has fields, each of them with kind, limits and whether it may be left out. */
export function schemaOutline(schema: JsonSchema | undefined, openapi: OpenApiDocument, depth = 1): Markup | '' {
  if (schema === undefined) return ''
  const shapes = depth > MOST_DEPTH ? [] : unnamedShapes(schema)
  return markup`${kind(schema, openapi)}${shapes.map((shape) => markup`<ul class="fields">${Object.entries(shape.properties ?? {}).map(([name, property]) => fieldRow(name, property, shape, openapi, depth))}</ul>`)}`
}

function fieldRow(name: string, property: JsonSchema, shape: JsonSchema, openapi: OpenApiDocument, depth: number): Markup {
  const optional = shape.required?.includes(name) === true ? '' : markup`<span class="type">, optional</span>`
  const words = property.description === undefined ? '' : markup` ${property.description}`
  return markup`<li><code>${name}</code> ${schemaOutline(property, openapi, depth + 1)}${optional}${words}</li>`
}
