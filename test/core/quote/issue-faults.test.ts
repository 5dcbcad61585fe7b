import { describe, expect, it } from 'vitest'
import type { Store } from '../../../core/catalog/store.ts'
import { issueFaults } from '../../../core/quote/issue-faults.ts'
import { viewOf } from '../pricing/a-market.ts'
import { aStore } from '../pricing/a-sighting.ts'
import { buy, sampleInputs, sampleTank } from './sample-inputs.ts'

/** Fields that are missing from a quote of one tank, in a place of the mode with this store. */
function missing(mode: 'club' | 'store', store: Partial<Store>) {
  const inputs = sampleInputs([sampleTank])
  const draft = {
    ...inputs.draft,
    title: 'A tank',
    standsUntil: '2026-11-20',
    builds: [{ id: 'a', name: '', why: '', lines: [buy(sampleTank)] }],
  }
  const stores = [aStore({ id: 'quay', ...store })]
  const prices = [viewOf(sampleTank.id, 'quay', 10_000, '2026-10-30')]
  return issueFaults({ ...inputs, install: { ...inputs.install, mode }, stores, prices, draft }, '2026-11-01')
}

describe('builds that cannot be issued', () => {
  it('are called by the letters that they have on the desk', () => {
    const inputs = sampleInputs([sampleTank])
    const lines = [buy(sampleTank), null, null].map((line) => (line === null ? [] : [line]))
    const builds = lines.map((of, index) => ({ id: `build-${index}`, name: '', why: '', lines: of }))
    const draft = { ...inputs.draft, title: 'A tank', standsUntil: '2026-11-20', builds }
    const told = issueFaults({ ...inputs, draft }, '2026-11-01').filter(({ field }) => field.startsWith('builds.'))
    expect(told.map(({ field, message }) => [field, message])).toEqual([
      ['builds.1.lines', 'Build B is empty. Fill it or take it out.'],
      ['builds.2.lines', 'Build C is empty. Fill it or take it out.'],
    ])
  })
})

describe('a quote of a place that is run as a store', () => {
  it('is not issued while no store is marked as its own, and says where one is marked', () => {
    const [fault, ...others] = missing('store', { own: false })
    expect(others).toEqual([])
    expect(fault?.field).toBe('ownStore')
    expect(fault?.message).toContain('Stores, open it, tick “This is our own store”')
  })

  it('is not issued while its own store is archived', () => {
    expect(missing('store', { own: true, archived: true }).map(({ field }) => field)).toEqual(['ownStore'])
  })

  it('is issued once one is marked; a club needs none', () => {
    expect(missing('store', { own: true })).toEqual([])
    expect(missing('club', { own: false })).toEqual([])
  })
})
