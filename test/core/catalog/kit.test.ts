import { describe, expect, it } from 'vitest'
import { checkKit, type KnownPart } from '../../../core/catalog/kit.ts'

const catalog = new Map<string, KnownPart>([
  ['tank', { kind: 'tank', name: 'Halden 90' }],
  ['heater', { kind: 'heater', name: 'Torvane 150 W' }],
  ['kit', { kind: 'kit', name: 'Halden set' }],
])
const check = (...productIds: string[]) => {
  const result = checkKit({ id: 'new-kit', name: 'Starter', parts: productIds.map((productId) => ({ productId, quantity: 1 })) }, catalog)
  return result.ok ? 'stored' : result.refusal.code
}

describe('what a kit may contain', () => {
  it.each([
    [['tank', 'heater'], 'stored'],
    [[], 'empty_kit'],
    [['new-kit'], 'contains_itself'],
    [['tank', 'kit'], 'contains_kit'],
    [['tank', 'elsewhere'], 'unknown_part'],
    [['tank', 'tank'], 'repeated_part'],
  ])('%j is %s', (parts, expected) => {
    expect(check(...parts)).toBe(expected)
  })

  it('names the part and the fix', () => {
    const result = checkKit({ id: null, name: 'Starter', parts: [{ productId: 'kit', quantity: 1 }] }, catalog)
    expect(!result.ok && result.refusal).toMatchObject({
      productId: 'kit',
      words: '"Halden set" is itself a kit. Add the products that are in it one by one.',
    })
  })
})
