import { describe, expect, it } from 'vitest'
import { sayNothingThere, sayPlace, sayTold } from '../../../web/app/watches/watch-words.ts'

const anywhere = { storeIds: [] }

describe('a watch in a place that is a store', () => {
  it('can tell of the own list: anywhere, in a region that has the own store, at the own store', () => {
    expect(sayNothingThere(anywhere, 'own', undefined)).toBeNull()
    expect(sayNothingThere(anywhere, 'own', ['far', 'own'])).toBeNull()
    expect(sayNothingThere({ storeIds: ['far', 'own'] }, 'own', undefined)).toBeNull()
  })

  it('says that it can tell nothing where the own store is not among those it is of, or none is marked', () => {
    expect(sayNothingThere(anywhere, 'own', ['far'])).toContain('is not in this region')
    expect(sayNothingThere({ storeIds: ['far'] }, 'own', undefined)).toContain('it is another one')
    expect(sayNothingThere(anywhere, undefined, undefined)).toContain('no store is marked as our own')
  })
})

describe('a row of the list of watches', () => {
  it('says where it looks before the names are read, and after', () => {
    expect([sayPlace('region', undefined), sayPlace('region', 'Shoreline')]).toEqual(['in one region', 'in Shoreline'])
    expect([sayPlace('store', undefined), sayPlace('store', 'Saltcote')]).toEqual(['at one store', 'at Saltcote'])
  })
  it('counts the prices that it told, each of which is told once', () => {
    expect([0, 1, 2].map(sayTold)).toEqual(['not yet', 'one price', '2 prices'])
  })
})
