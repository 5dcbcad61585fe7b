import { describe, expect, it } from 'vitest'
import { COMMON_SIZES, commonSize, sizeCalled } from '../../../core/catalog/common-sizes.ts'
import type { TankSpec } from '../../../core/catalog/spec.ts'
import { METRIC, US } from '../../../core/units/say.ts'
import { hasSides, mayFill, sidesOf } from '../../../web/app/catalog/common-sides.ts'
import { emptyProduct, readDraft } from '../../../web/app/catalog/product-draft.ts'

const long = commonSize('us-20-long')!
const cm90 = commonSize('cm-90')!

describe('a common size in the form of a tank', () => {
  it('is understood by the name the trade gives it, in any spelling', () => {
    for (const said of ['20 long', ' 20  LONG ', '20 Long']) expect(sizeCalled(said)?.id, said).toBe('us-20-long')
    expect([sizeCalled('55 gallons')?.id, sizeCalled('55 Gallon')?.id, sizeCalled('90 cm')?.id]).toEqual(['us-55', 'us-55', 'cm-90'])
    for (const other of ['', '20', '90', 'long', '21 long']) expect(sizeCalled(other), other).toBeUndefined()
  })
  it.each(COMMON_SIZES.map((size) => [size.label, size] as const))(
    '%s fills in sides that are read back to the millimetre, in either system',
    (_, size) => {
      for (const reader of [US, METRIC]) {
        const { body, faults } = readDraft({ ...emptyProduct('tank'), name: 'Saltcote', spec: sidesOf(size) }, reader)
        expect(faults).toEqual({})
        for (const side of ['lengthMm', 'widthMm', 'heightMm'] as const)
          expect(Math.abs((body.spec as TankSpec)[side] - size[side]), side).toBeLessThanOrEqual(0.5)
      }
    },
  )
  it('never takes the place of what somebody typed, only of nothing and of what a size before it filled in', () => {
    expect(mayFill({}, null)).toBe(true)
    expect(mayFill({ lengthMm: '', widthMm: ' ', glassMm: '8' }, null)).toBe(true)
    expect(mayFill({ lengthMm: '91 cm' }, null)).toBe(false)
    expect(mayFill(sidesOf(long), null)).toBe(false)
    expect(mayFill(sidesOf(long), long)).toBe(true)
    expect(mayFill({ ...sidesOf(long), heightMm: '13 in' }, long)).toBe(false)
    expect(mayFill(sidesOf(cm90), long)).toBe(false)
  })
  it('knows when it is filled in', () => {
    expect(hasSides({ ...sidesOf(cm90), glassMm: '8' }, cm90)).toBe(true)
    expect(hasSides({ ...sidesOf(cm90), widthMm: '46 cm' }, cm90)).toBe(false)
  })
})
