import { describe, expect, it } from 'vitest'
import type { Product } from '../../../core/catalog/product.ts'
import { SPEC_FIELDS } from '../../../core/catalog/spec-fields.ts'
import { TANK_SHAPES } from '../../../core/catalog/tank-shape.ts'
import { METRIC } from '../../../core/units/say.ts'
import { draftOf, emptyProduct, readDraft } from '../../../web/app/catalog/product-draft.ts'
import { formFields, typeField } from '../../../web/app/catalog/shape-fields.ts'

const measures = (spec: Record<string, string>): string[] =>
  formFields('tank', spec).flatMap(({ key }) => (['lengthMm', 'widthMm', 'heightMm', 'bowMm', 'endMm'].includes(key) ? [key] : []))
/** As somebody types it, one field after the other. */
const typed = (fields: ReadonlyArray<readonly [string, string]>): Record<string, string> =>
  fields.reduce<Record<string, string>>((spec, [key, text]) => typeField('tank', spec, key, text), {})
const bodyOf = (spec: Record<string, string>) => readDraft({ ...emptyProduct('tank'), name: 'Halden', spec }, METRIC)

describe('the form of a tank', () => {
  it.each([
    ['', ['lengthMm', 'widthMm', 'heightMm']],
    ['rectangular', ['lengthMm', 'widthMm', 'heightMm']],
    ['bow_front', ['lengthMm', 'widthMm', 'heightMm', 'bowMm']],
    ['cylinder', ['lengthMm', 'heightMm']],
    ['hexagon', ['lengthMm', 'widthMm', 'heightMm']],
    ['corner_cut', ['lengthMm', 'widthMm', 'heightMm', 'endMm']],
    ['corner_round', ['lengthMm', 'heightMm']],
  ])('asks for the shape first and of “%s” for its own measures alone', (shape, wanted) => {
    expect(formFields('tank', { shape })[0]?.key).toBe('shape')
    expect(measures({ shape })).toEqual(wanted)
  })
  it('says how each is measured: a cylinder by its diameter', () => {
    expect(formFields('tank', { shape: 'cylinder' }).find(({ key }) => key === 'lengthMm')?.label).toBe('Diameter')
    for (const shape of Object.keys(TANK_SHAPES)) {
      const labels = formFields('tank', { shape }).map(({ label }) => label)
      expect(new Set(labels).size, shape).toBe(labels.length)
    }
  })
  it('keeps the one measure of a round tank as its length and its depth, whichever was typed first', () => {
    for (const fields of [
      [
        ['shape', 'cylinder'],
        ['lengthMm', '50 cm'],
      ],
      [
        ['lengthMm', '50 cm'],
        ['shape', 'cylinder'],
      ],
    ] as const)
      // prettier-ignore
      expect(bodyOf(typed([...fields, ['heightMm', '60 cm']]))).toMatchObject({
        faults: {},
        body: { spec: { shape: 'cylinder', lengthMm: 500, widthMm: 500, heightMm: 600 } },
      })
  })
  it('shows both lengths of a round tank where two that differ were typed', () => {
    expect(measures({ shape: 'cylinder', lengthMm: '50 cm', widthMm: '51 cm' })).toContain('widthMm')
  })
  it('sends no bow of a tank that is none any more, and no fault of a field that is not shown', () => {
    const box = [['lengthMm', '90'], ['widthMm', '40'], ['heightMm', '50']] as const // prettier-ignore
    const { body, faults } = bodyOf(typed([['shape', 'bow_front'], ...box, ['bowMm', 'a bit'], ['shape', 'hexagon']]))
    expect(faults).toEqual({})
    expect(Object.keys(body.spec)).not.toContain('bowMm')
    const stored = {
      id: '01980000-0000-7000-8000-000000000001', kind: 'tank', name: 'Halden', maker: null, gtin: null, oversize: false, note: null,
      spec: { lengthMm: 900, widthMm: 400, heightMm: 500, shape: 'bow_front', bowMm: 80 }, parts: [], archived: false, version: 1,
    } as Product // prettier-ignore
    const draft = draftOf(stored, () => '', METRIC)
    const edited = { ...draft, spec: typeField('tank', draft.spec, 'shape', 'rectangular') }
    expect(readDraft(edited, METRIC, { product: stored, draft }).body.spec).not.toHaveProperty('bowMm')
    expect(readDraft(draft, METRIC, { product: stored, draft }).body.spec).toEqual(stored.spec)
  })
  it('leaves every other kind as its table has it', () => {
    expect(formFields('stand', { shape: 'bow_front' })).toEqual(SPEC_FIELDS.stand)
  })
})
