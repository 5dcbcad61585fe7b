import type { Kind } from '../../../core/catalog/kinds.ts'
import type { KitPart, Product } from '../../../core/catalog/product.ts'
import { SPEC_FIELDS } from '../../../core/catalog/spec-fields.ts'
import type { Field } from '../../../core/fields.ts'
import type { ReaderUnits } from '../../../core/units/quantity.ts'
import type { ProductBody } from '../client/products.ts'
import { isIdle } from './shape-fields.ts'
import { readFigure, spellFigure, type FigureLimits } from '../parts/figure.ts'

/** A product as it is typed: every spec field as text, so that nothing typed is lost to a fault. Empty is "nobody entered it". */
export interface ProductDraft {
  kind: Kind
  name: string
  maker: string
  gtin: string
  oversize: boolean
  note: string
  /** Whole months, as typed. */
  warrantyMonths: string
  archived: boolean
  spec: Record<string, string>
  parts: Array<KitPart & { name: string }>
}

export const emptyProduct = (kind: Kind): ProductDraft => ({
  kind,
  name: '',
  maker: '',
  gtin: '',
  oversize: false,
  note: '',
  warrantyMonths: '',
  archived: false,
  spec: {},
  parts: [],
})

/** What a number field accepts, as the shared figure reader wants it. */
export function limitsOf(field: Extract<Field, { type: 'number' | 'whole' }>): FigureLimits {
  return { label: field.label, unit: field.unit, unitText: field.unitText, min: field.min, max: field.max, whole: field.type === 'whole' }
}

function spellField(field: Field, value: unknown, reader: ReaderUnits): string {
  if (value === undefined || value === null) return ''
  if (field.type === 'flag') return value === true ? 'yes' : 'no'
  if (field.type === 'choice') return typeof value === 'string' ? value : ''
  return typeof value === 'number' ? spellFigure(value, limitsOf(field), reader) : ''
}

/** A stored product, spelled for its form. */
export function draftOf(product: Product, nameOf: (productId: string) => string, reader: ReaderUnits): ProductDraft {
  const spec = product.spec as Record<string, unknown>
  return {
    kind: product.kind,
    name: product.name,
    maker: product.maker ?? '',
    gtin: product.gtin ?? '',
    oversize: product.oversize,
    note: product.note ?? '',
    warrantyMonths: product.warrantyMonths == null ? '' : String(product.warrantyMonths),
    archived: product.archived,
    spec: Object.fromEntries(SPEC_FIELDS[product.kind].map((field) => [field.key, spellField(field, spec[field.key], reader)])),
    parts: product.parts.map((part) => ({ ...part, name: nameOf(part.productId) })),
  }
}

function readField(field: Field, text: string, reader: ReaderUnits): { value: unknown; fault: string | null } {
  if (text.trim() === '')
    return { value: undefined, fault: field.required ? `${field.label} is missing. It is printed on the box or can be measured.` : null }
  if (field.type === 'flag') return { value: text === 'yes', fault: null }
  if (field.type === 'choice') return { value: text, fault: null }
  const read = readFigure(text, limitsOf(field), reader)
  return { value: read.value ?? undefined, fault: read.fault }
}

/** As the server has it. */
const WARRANTY: FigureLimits = { label: 'Warranty', unit: 'count', min: 0, max: 600, whole: true }

export interface DraftReading {
  body: ProductBody
  /** By field: "name", "spec.lengthMm", "parts.0.quantity". */
  faults: Record<string, string>
}

/**
 * The body to send. A figure whose text was not touched keeps its stored value to the last digit: spelling and reading would round it.
 */
export function readDraft(draft: ProductDraft, reader: ReaderUnits, stored?: { product: Product; draft: ProductDraft }): DraftReading {
  const faults: Record<string, string> = {}
  const spec: Record<string, unknown> = {}
  for (const field of SPEC_FIELDS[draft.kind]) {
    const text = draft.spec[field.key] ?? ''
    // A measure of another shape stands in no field: what is stored of it stays while the shape does, what was typed of it is not sent.
    if (isIdle(draft.kind, draft.spec, field.key) && (!stored || stored.draft.spec['shape'] !== draft.spec['shape'])) continue
    const untouched = stored !== undefined && stored.product.kind === draft.kind && stored.draft.spec[field.key] === text
    const { value, fault } = untouched
      ? { value: (stored.product.spec as Record<string, unknown>)[field.key], fault: null }
      : readField(field, text, reader)
    if (fault !== null) faults[`spec.${field.key}`] = fault
    if (value !== undefined) spec[field.key] = value
  }
  if (draft.name.trim() === '') faults['name'] = 'Name is empty. Write it as a person would say it, the maker included.'
  const months = readFigure(draft.warrantyMonths, WARRANTY, reader)
  if (months.fault !== null) faults['warrantyMonths'] = months.fault
  const orNull = (text: string): string | null => (text.trim() === '' ? null : text.trim())
  const body = {
    kind: draft.kind,
    name: draft.name.trim(),
    maker: orNull(draft.maker),
    gtin: orNull(draft.gtin),
    oversize: draft.oversize,
    note: orNull(draft.note),
    warrantyMonths: months.value,
    archived: draft.archived,
    spec,
    parts: draft.kind === 'kit' ? draft.parts.map(({ productId, quantity }) => ({ productId, quantity })) : [],
  }
  // The spec was built from the field table of this very kind; spec-fields.ts proves at compile time that the table and the contract agree.
  return { body: body as ProductBody, faults }
}
