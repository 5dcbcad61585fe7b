import { describe, expect, it } from 'vitest'
import { SightingInput } from '../../../core/pricing/schema.ts'
import { newId } from '../../../web/app/post/new-id.ts'
import {
  draftOfUnsent,
  emptySighting,
  postWords,
  readSighting,
  shortName,
  type SightingDraft,
} from '../../../web/app/post/sighting-draft.ts'

const today = '2026-10-20'
const productId = '01980000-0000-7000-8000-000000000001'
const storeId = '01980000-0000-7000-8000-000000000002'
const draft: SightingDraft = {
  ...emptySighting(today, storeId),
  product: { id: productId, name: 'Pellick C-1800', kind: 'filter' },
  price: '159',
  condition: 'sale',
}
const read = (part: Partial<SightingDraft>) => readSighting({ ...draft, ...part }, 'USD', today)

describe('a sighting as it is typed', () => {
  it('is what the server takes', () => {
    const { body } = read({ regular: '195', lastDay: '2026-10-26', note: ' on the end shelf ' })
    expect(body).toMatchObject({ priceMinor: 15900, printedRegularMinor: 19500, lastDay: '2026-10-26', note: 'on the end shelf' })
    expect(SightingInput.safeParse({ id: newId(), ...body }).error).toBeUndefined()
  })
  it('forgets the last day of a sale once it is a shelf price', () => {
    expect(read({ lastDay: '2026-10-26', condition: 'shelf' }).body?.lastDay).toBeNull()
  })
  it.each([
    ['product', { product: null }],
    ['store', { storeId: '' }],
    ['price', { price: '' }],
    ['price', { price: '0' }],
    ['price', { price: '15o' }],
    ['regular', { regular: 'x' }],
    ['seenOn', { seenOn: '2026-10-21' }],
    ['seenOn', { seenOn: '2026-02-30' }],
    ['seenOn', { seenOn: '2019-03-01' }],
    ['regular', { regular: '129' }],
    ['regular', { regular: '129', condition: 'clearance' }],
    ['lastDay', { lastDay: '2026-10-19' }],
    ['lastDay', { lastDay: '2028-10-19' }],
  ] as const)('is stopped with a sentence beside the field: %s', (field, part) => {
    const reading = read(part)
    expect(reading.body).toBeNull()
    expect(Object.keys(reading.faults)).toEqual([field])
    expect(reading.faults[field]).toMatch(/\.$/)
  })
  it('has a button that says what will happen', () => {
    expect(postWords(read({}), { name: 'Saltcote Pet & Pond' }, 'USD', 'USD')).toBe('Post $159.00 at Saltcote')
    expect(postWords(read({}), undefined, 'USD', 'USD')).toBe('Post $159.00')
    expect(postWords(read({}), { name: 'Saltcote Pet & Pond' }, 'CAD', 'USD')).toBe('Post CAD 159.00 at Saltcote')
    expect(postWords(read({ price: '' }), undefined, 'USD', 'USD')).toBe('Post the price')
  })
  it('comes back whole from what was refused', () => {
    const body = read({ regular: '195', lastDay: '2026-10-26' }).body
    if (!body) throw new Error('the draft reads')
    const mended = draftOfUnsent(
      {
        sighting: { id: 'old', ...body },
        productName: 'Pellick C-1800',
        storeName: 'Saltcote',
        keptAt: '2026-10-20T14:00:00Z',
        refused: null,
      },
      'USD',
    )
    expect(readSighting(mended, 'USD', today).body).toEqual(body)
    expect(mended.replaces).toBe('old')
  })
})

it.each([
  ['Saltcote Pet & Pond', 'Saltcote'],
  ['Kettle Lane', 'Kettle Lane'],
  ['The Upriver Aquarium House', 'The Upriver'],
])('%s is called %s', (name, short) => {
  expect(shortName(name)).toBe(short)
})
