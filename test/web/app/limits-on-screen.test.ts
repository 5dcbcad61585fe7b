import { describe, expect, it } from 'vitest'
import { KINDS } from '../../../core/catalog/kinds.ts'
import { SPEC_FIELDS } from '../../../core/catalog/spec-fields.ts'
import type { NumberField } from '../../../core/fields.ts'
import { displayUnit } from '../../../core/units/say.ts'
import { limitsOf } from '../../../web/app/catalog/product-draft.ts'
import { fieldUnit, readFigure, spellFigure } from '../../../web/app/parts/figure.ts'
import { READERS } from '../../support/readers.ts'

const FIGURES: Array<[string, NumberField]> = KINDS.flatMap((kind) =>
  SPEC_FIELDS[kind].flatMap((field): Array<[string, NumberField]> =>
    field.type === 'number' || field.type === 'whole' ? [[`${kind}.${field.key}`, field]] : [],
  ),
)

describe.each(READERS)('a figure on the screen of a %s reader', (_, reader) => {
  it.each(FIGURES)('%s is refused beyond its limits in the unit of its field, with the limit', (__, field) => {
    const limits = limitsOf(field)
    const unit = fieldUnit(limits, reader)
    for (const [beyond, words] of [
      [field.min - Math.max(1, Math.abs(field.min)), 'The least is'],
      [field.max * 2, 'The most is'],
    ] as const) {
      const { fault } = readFigure(spellFigure(beyond, limits, reader), limits, reader)
      for (const told of [field.label, words, unit]) expect(fault).toContain(told)
    }
  })

  it.each(FIGURES)('%s refuses words with an example to follow, and says nothing of an empty field', (__, field) => {
    const limits = limitsOf(field)
    expect(readFigure('about twenty', limits, reader).fault).toMatch(/Write it like \d/)
    expect(readFigure('20 furlongs', limits, reader).fault).toMatch(/Write it like \d|is no dose/)
    expect(readFigure('   ', limits, reader)).toEqual({ value: null, fault: null })
  })

  it.each(FIGURES.filter(([, { unit }]) => unit === 'mm' || unit === 'kg' || unit === 'L' || unit === 'degC'))(
    '%s is understood in either system’s unit, written behind it',
    (__, field) => {
      const limits = limitsOf(field)
      const middle = (field.min + field.max) / 2
      for (const [, other] of READERS) {
        const text = `${spellFigure(middle, { ...limits, max: undefined }, other)} ${displayUnit(field.unit ?? 'count', other)}`
        const read = readFigure(text.replace(',', reader.decimal).replace('.', reader.decimal), limits, { ...reader, gallon: other.gallon })
        expect(read.fault).toBeNull()
        expect(Math.abs((read.value ?? 0) - middle) / middle).toBeLessThan(2e-3)
      }
    },
  )
})
