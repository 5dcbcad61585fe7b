import { describe, expect, it } from 'vitest'
import { matchingProducts } from '../../../web/app/parts/matching-products.ts'

const filter = { id: 'f', name: 'Pellick C-1800', kind: 'filter', maker: 'Pellick Works' } as const
const heater = { id: 'h', name: 'Torvane Heater 100 W', kind: 'heater' } as const
const tank = { id: 't', name: 'Wendlemere 20 long', kind: 'tank' } as const
const known = [filter, heater, tank]
const found = (typed: string): string[] => matchingProducts(known, typed).map(({ id }) => id)

describe('the products at hand, while the catalog has not answered yet', () => {
  it('are all of them while nothing is typed', () => expect(found('  ')).toEqual(['f', 'h', 't']))
  it.each([
    ['WENDLE', ['t']],
    ['pelick', ['f']],
    ['torvnae', ['h']],
    ['torvane 100w', ['h']],
    ['100 w', ['h']],
    ['works', ['f']],
    ['long 20', ['t']],
  ])('are found by %s', (typed, ids) => expect(found(typed)).toEqual(ids))
  it.each(['c-1200', 'zander', 'torvane long', 'pxx'])('are none of them for %s: nothing else may be tapped by mistake', (typed) =>
    expect(found(typed)).toEqual([]),
  )
})
