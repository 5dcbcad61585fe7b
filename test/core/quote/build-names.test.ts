import { describe, expect, it } from 'vitest'
import type { Product } from '../../../core/catalog/product.ts'
import { buildNames } from '../../../core/quote/build-names.ts'
import type { Build, BuildLine } from '../../../core/quote/draft.ts'

const product = (id: string, kind: Product['kind'], name: string): [string, Product] => [id, { id, kind, name } as Product]
const products = new Map([
  product('tank', 'tank', 'Halden 29'),
  product('kit', 'kit', 'Torvane Start 20'),
  product('filter', 'filter', 'Osmere 200'),
])
const buy = (productId: string): BuildLine => ({ id: productId, answer: 'buy', productId, quantity: 1, storeId: null, note: '' })
const build = (name: string, ...lines: BuildLine[]): Build => ({ id: name + lines.length, name, why: '', lines })
const own = {
  id: 'own',
  answer: 'owned',
  slot: 'hold_water',
  productId: null,
  description: 'from my uncle',
  quantity: 1,
  spec: null,
} as const
const namesOf = (...builds: Build[]): string[] => buildNames({ builds }, products)

describe('what a build is called', () => {
  it('is what the advisor called it, else its tank, its kit, or its letter', () => {
    expect(
      namesOf(build('Long and deep', buy('tank')), build('', buy('filter'), buy('tank')), build('', buy('kit')), build('', buy('filter'))),
    ).toEqual(['Long and deep', 'Halden 29', 'Torvane Start 20', 'Build D'])
    expect(namesOf(build('', own))).toEqual(['The tank you have'])
  })
  it('differs from every other: two builds with one tank are told apart by their letters, never by a number', () => {
    const names = namesOf(build('', buy('tank')), build('', buy('tank')), build('', buy('tank')), build('Halden 29', buy('kit')))
    expect(names).toEqual(['Halden 29, option A', 'Halden 29, option B', 'Halden 29, option C', 'Halden 29'])
    expect(new Set(names).size).toBe(4)
  })
  it('is never a name that the desk gave by itself', () => {
    for (const name of ['First build', 'First build 2', 'First build 3', 'Second build'])
      expect(namesOf(build(name, buy('tank'))), name).toEqual(['Halden 29'])
    expect(namesOf(build('First build of ours', buy('tank')))).toEqual(['First build of ours'])
  })
})
