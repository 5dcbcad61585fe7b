import { describe, expect, it } from 'vitest'
import { deliveryFee } from '../../../core/pricing/delivery.ts'

const flat = { kind: 'online', delivery: { kind: 'flat', feeMinor: 990, oversizeMinor: 4000 } } as const
const freeOver = { kind: 'online', delivery: { kind: 'free_over', feeMinor: 990, freeOverMinor: 7500, oversizeMinor: 4000 } } as const

describe('delivery', () => {
  it('costs nothing where goods are collected', () => {
    expect(deliveryFee({ kind: 'local', delivery: { kind: 'pickup_only' } }, 100_000, true)).toBe(0)
  })

  it('is impossible from an online store that delivers nothing', () => {
    expect(deliveryFee({ kind: 'online', delivery: { kind: 'pickup_only' } }, 100, false)).toBe('cannot_be_delivered')
  })

  it.each([
    [flat, 100_000, false, 990],
    [flat, 100_000, true, 4990],
    [freeOver, 7499, false, 990],
    [freeOver, 7500, false, 0],
    [freeOver, 7500, true, 4000],
    [freeOver, 7499, true, 4990],
    [{ ...flat, kind: 'local' as const }, 100, false, 990],
  ])('is by the rule: case %#', (store, goodsMinor, oversize, fee) => {
    expect(deliveryFee(store, goodsMinor, oversize)).toBe(fee)
  })
})
