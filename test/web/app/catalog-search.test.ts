import { groupsOf } from '../../../core/catalog/livestock.ts'
import { describe, expect, it } from 'vitest'
import { METRIC, US } from '../../../core/units/say.ts'
import { readCatalogSearch } from '../../../web/app/catalog/catalog-search.ts'
import { sayTests } from '../../../web/app/catalog/spec-filter-words.ts'

describe('the filters in the address of the catalog', () => {
  it('are read back as they were put there', () => {
    const search = { kind: 'heater', q: 'torvane', spec: 'powerW:100..' } as const
    expect(readCatalogSearch({ ...search })).toEqual(search)
  })

  it('leave out what is no filter, and a spec without its kind', () => {
    expect(readCatalogSearch({ kind: 'boat', q: 3, spec: 'powerW:100..' })).toEqual({})
    expect(readCatalogSearch({ kind: 'heater', spec: '' })).toEqual({ kind: 'heater' })
  })

  it('tell a livestock group of the place by the name that it has there', () => {
    const [seeded] = groupsOf()
    const own = { ...groupsOf()[0]!, id: 'own-0198c0de-0000-7000-8000-000000000001', name: 'Pond fish', standing: 'own' as const }
    const place = { livestock: [own, { ...groupsOf()[1]!, name: 'Bettas', standing: 'edited' as const }] }
    const said = (is: string) => sayTests('livestock', [{ key: 'group', is }], METRIC, place)
    expect([said(own.id), said(groupsOf()[1]!.id), said(seeded!.id)]).toEqual([
      'Livestock group: pond fish',
      'Livestock group: bettas',
      `Livestock group: ${seeded!.name.toLowerCase()}`,
    ])
  })

  it('are told in words, in the units of the reader', () => {
    const tests = [
      { key: 'lengthMm', least: 800, most: 1000 },
      { key: 'style', is: 'rimless' },
    ]
    expect(sayTests('tank', tests, METRIC, {})).toBe('Length 80 cm to 100 cm · Style: rimless')
    expect(sayTests('stand', [{ key: 'topLengthMm', least: 914.4, most: null }], US, {})).toBe('Top length at least 36 in')
    expect(sayTests('heater', [{ key: 'powerW', least: null, most: 99.5 }, { key: 'adjustable', is: true }], METRIC, {})).toBe('Power at most 99.50 W · Adjustable: yes') // prettier-ignore
  })
})
