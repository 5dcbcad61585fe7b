import { describe, expect, it } from 'vitest'
import { kindsMeant, KIND_SEARCH_WORDS } from '../../../core/catalog/kind-words.ts'
import {
  BASIC_SLOTS,
  EXTRA_SLOTS,
  kindInText,
  KIND_NAMES,
  KINDS,
  SLOT_NAMES,
  SLOT_OF,
  SLOT_PLAIN_NAMES,
  SLOTS,
} from '../../../core/catalog/kinds.ts'
import { LIVESTOCK_GROUPS } from '../../../core/catalog/livestock.ts'
import { kindWords, SPEC_FIELDS } from '../../../core/catalog/spec-fields.ts'

/** The vocabulary of the trade that the catalog is to know: own list, written out a second time on purpose. */
const VOCABULARY = [
  'tank', 'kit', 'stand', 'mat', 'lid', 'filter', 'filter media', 'sump', 'heater', 'chiller', 'light', 'air pump', 'circulation pump', 'skimmer', 'CO2 system', 'UV clarifier',
  'substrate', 'hardscape', 'background', 'conditioner', 'ammonia source', 'bacteria', 'salt mix', 'reverse-osmosis unit', 'test kit', 'refractometer', 'thermometer', 'timer',
  'power', 'battery backup', 'plumbing', 'tool', 'food', 'plant', 'livestock', 'service',
] // prettier-ignore

describe('the kinds of product', () => {
  it('are all of the vocabulary', () => {
    expect(KINDS.map(kindInText)).toEqual(VOCABULARY)
  })
  it('fill a slot each but the kit, and every slot has its one kind', () => {
    const filled = KINDS.flatMap((kind) => (kind === 'kit' ? [] : [SLOT_OF[kind]]))
    expect(filled.toSorted()).toEqual([...SLOTS].toSorted())
    expect([...BASIC_SLOTS, ...EXTRA_SLOTS]).toEqual(SLOTS)
  })
  it('have names that no other has', () => {
    for (const names of [KIND_NAMES, SLOT_NAMES, SLOT_PLAIN_NAMES]) {
      const all = Object.values(names)
      expect(new Set(all).size).toBe(all.length)
    }
  })
  it('are said with the right article', () => {
    expect((['uv', 'air_pump', 'co2', 'livestock', 'ammonia_source', 'plumbing', 'ro_unit'] as const).map(kindWords)).toEqual([
      'a UV clarifier', 'an air pump', 'a CO2 system', 'an animal', 'an ammonia source', 'a plumbing part', 'a reverse-osmosis unit',
    ]) // prettier-ignore
  })
  it('ask something of everything but what it is called', () => {
    for (const kind of KINDS) expect(SPEC_FIELDS[kind].length, kind).toBeGreaterThan(0)
  })
  it('name each livestock group that comes with the service as the group is named', () => {
    const field = SPEC_FIELDS.livestock.find(({ key }) => key === 'group')
    expect(field?.type === 'choice' && field.options).toEqual(LIVESTOCK_GROUPS.map(({ id, name }) => ({ value: id, label: name })))
  })
})

describe('a word that is typed', () => {
  it.each([
    ['powerhead', ['circulation_pump']],
    ['Dechlor', ['conditioner']],
    ['heaters', ['heater']],
    ['salt', ['salt_mix']],
    ['rodi', ['ro_unit']],
    ['osmosis', ['ro_unit']],
    ['gravel', ['substrate']],
    ['qu', []],
    ['torvane', []],
  ] as const)('%s means %s', (word, kinds) => {
    expect(kindsMeant(word)).toEqual(kinds)
  })
  it('is short and plain: no list holds a word twice or with a capital', () => {
    for (const [kind, words] of Object.entries(KIND_SEARCH_WORDS)) {
      expect(new Set(words).size, kind).toBe(words.length)
      for (const word of words) expect(word).toBe(word.toLowerCase())
    }
  })
})
