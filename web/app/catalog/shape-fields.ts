import type { Kind } from '../../../core/catalog/kinds.ts'
import { SPEC_FIELDS } from '../../../core/catalog/spec-fields.ts'
import type { TankForm } from '../../../core/catalog/tank-shape.ts'
import type { Field } from '../../../core/fields.ts'
import { measureOfShape } from '../../../core/sizing/missing-measure.ts'

/** A spec as it is typed. */
type Texts = Record<string, string>
type Words = Pick<Field, 'label' | 'help'>

/** Shapes that are as deep as they are long: one measure says both. */
const ROUND: ReadonlySet<string> = new Set<TankForm>(['cylinder', 'corner_round'])

/** How a shape's box is measured, where "length" and "width" would leave one guessing. */
const MEASURED: Partial<Record<TankForm, { lengthMm?: Words; widthMm?: Words }>> = {
  bow_front: { widthMm: { label: 'Width', help: 'Outside, from the back to the middle of the bow.' } },
  cylinder: {
    lengthMm: { label: 'Diameter', help: 'Outside.' },
    widthMm: { label: 'Diameter, front to back', help: 'Outside. As large as the other.' },
  },
  hexagon: {
    lengthMm: { label: 'Length', help: 'Outside, from corner to corner along the front.' },
    widthMm: { label: 'Width', help: 'Outside, from the flat front to the flat back.' },
  },
  corner_cut: {
    lengthMm: { label: 'Along one wall', help: 'Outside, from the corner to the end.' },
    widthMm: { label: 'Along the other wall', help: 'Outside, from the corner to the end.' },
  },
  corner_round: {
    lengthMm: { label: 'Along each wall', help: 'Outside, from the corner to the end.' },
    widthMm: { label: 'Along the other wall', help: 'Outside. As long as the first.' },
  },
}

const MEASURES: ReadonlySet<string> = new Set(['shape', 'lengthMm', 'widthMm', 'heightMm', 'bowMm', 'endMm'])
/** Whether a tank's field says how large it is outside, and of what shape. */
export const isMeasure = ({ key }: Field): boolean => MEASURES.has(key)

/** Whether one field stands for both lengths: nobody typed two that differ. */
const isOneMeasure = (kind: Kind, spec: Texts): boolean =>
  kind === 'tank' && ROUND.has(spec['shape'] ?? '') && ['', spec['lengthMm'] ?? ''].includes(spec['widthMm'] ?? '')

/** Whether a tank of the chosen shape has no such measure. */
export const isIdle = (kind: Kind, spec: Texts, key: string): boolean =>
  kind === 'tank' && (key === 'bowMm' || key === 'endMm') && measureOfShape(spec['shape']) !== key

/**
 * Fields of a kind's form. A tank is asked for its shape first, then for what that shape has, in the words it is measured by.
 *
 * @example formFields('tank', { shape: 'cylinder' }).map(({ label }) => label) // ['Shape', 'Diameter', 'Height', …]
 */
export function formFields(kind: Kind, spec: Texts): readonly Field[] {
  const fields: readonly Field[] = SPEC_FIELDS[kind]
  if (kind !== 'tank') return fields
  const words: Record<string, Words | undefined> = MEASURED[(spec['shape'] ?? '') as TankForm] ?? {}
  const one = isOneMeasure(kind, spec)
  return [...fields.filter(({ key }) => key === 'shape'), ...fields.filter(({ key }) => key !== 'shape')]
    .filter(({ key }) => !isIdle(kind, spec, key) && !(one && key === 'widthMm'))
    .map((field) => ({ ...field, ...words[field.key] }))
}

/** The spec with one field typed. The one measure of a round tank is its length and its depth. */
export function typeField(kind: Kind, spec: Texts, key: string, text: string): Texts {
  const typed = { ...spec, [key]: text }
  const length = typed['lengthMm'] ?? ''
  if (key === 'lengthMm' && isOneMeasure(kind, spec)) return { ...typed, widthMm: length }
  return key === 'shape' && isOneMeasure(kind, typed) ? { ...typed, widthMm: length } : typed
}
