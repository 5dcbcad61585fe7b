import { SPEC_FIELDS } from '../../../core/catalog/spec-fields.ts'
import type { Clash } from '../parts/conflict-told.tsx'
import { mergeTyped } from '../parts/merge.ts'
import type { ProductDraft } from './product-draft.ts'

const LABELS: Partial<Record<keyof ProductDraft, string>> = {
  name: 'Name',
  maker: 'Maker',
  gtin: 'Barcode',
  oversize: 'Oversize',
  note: 'Note',
  warrantyMonths: 'Warranty',
  archived: 'Archived',
  parts: 'In the box',
}

function spell(value: unknown): string {
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (Array.isArray(value)) return (value as ProductDraft['parts']).map(({ quantity, name }) => `${quantity} × ${name}`).join(', ')
  return typeof value === 'string' ? value : ''
}

/** Someone else's saved product brought together with what is typed here, spec fields one by one. */
export function mergeProduct(base: ProductDraft, mine: ProductDraft, theirs: ProductDraft): { draft: ProductDraft; clashes: Clash[] } {
  const whole = mergeTyped({ ...base, spec: null }, { ...mine, spec: null }, { ...theirs, spec: null })
  const spec = mergeTyped(base.spec, mine.spec, theirs.spec)
  const clashes = [
    ...whole.clashes.map((key) => ({ label: LABELS[key] ?? key, mine: spell(mine[key]), theirs: spell(theirs[key]) })),
    ...spec.clashes.map((key) => ({
      label: SPEC_FIELDS[mine.kind].find((field) => field.key === key)?.label ?? key,
      mine: mine.spec[key] ?? '',
      theirs: theirs.spec[key] ?? '',
    })),
  ]
  return { draft: { ...whole.merged, spec: spec.merged }, clashes }
}
