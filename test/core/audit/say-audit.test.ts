import { describe, expect, it } from 'vitest'
import { AUDIT_SENTENCES } from '../../../core/audit/audit-actions.ts'
import { auditChanges } from '../../../core/audit/audit-changes.ts'
import { sayAudit, sayChange, sayChanges, sayField } from '../../../core/audit/say-audit.ts'

const mara = { id: 'm', name: 'Mara Holt' }

describe('an entry in words', () => {
  it.each([
    ['quote_issued', mara, { kind: 'quote', id: 'q', name: '2026-0147' }, 'Mara Holt issued quote 2026-0147'],
    ['person_changed', mara, { kind: 'person', id: 'b', name: 'Bram Oakley' }, 'Mara Holt changed Bram Oakley'],
    ['store_added', mara, { kind: 'store', id: 's', name: 'Saltcote' }, 'Mara Holt added the store “Saltcote”'],
    ['product_changed', mara, { kind: 'product', id: 'p', name: 'Torvane 150 W' }, 'Mara Holt changed “Torvane 150 W”'],
    ['customer_erased', mara, { kind: 'customer', id: 'c', name: null }, 'Mara Holt erased a customer'],
    ['region_deleted', mara, { kind: 'region', id: 'r', name: 'Estuary' }, 'Mara Holt took the region “Estuary” out'],
    ['currency_rate_entered', mara, { kind: 'currency_rate', id: null, name: 'NOK' }, 'Mara Holt entered the rate of exchange of NOK'],
    [
      'other_club_added',
      mara,
      { kind: 'other_club', id: 'c', name: 'reef.example' },
      'Mara Holt had prices of the other club “reef.example” read',
    ],
    ['install_changed', mara, { kind: 'install', id: null, name: null }, 'Mara Holt changed the settings'],
    [
      'password_link_made',
      null,
      { kind: 'person', id: 'm', name: 'Mara Holt' },
      'Someone at the server’s console, or the service itself, made a link that sets a new password for Mara Holt',
    ],
  ])('%s', (action, actor, subject, words) => expect(sayAudit({ action, actor, subject })).toBe(words))

  it('leaves no blank unfilled, and takes a name with signs in it as it is', () => {
    for (const action of [...Object.keys(AUDIT_SENTENCES), 'of_a_later_version']) {
      const said = sayAudit({ action, actor: { id: 'm', name: '$& {what}' }, subject: { kind: 'product', id: 'p', name: '$1' } })
      expect(said.startsWith('$& {what}'), said).toBe(true)
      expect(said.slice('$& {what}'.length)).not.toMatch(/\{who\}|\{what\}/)
    }
  })
})

describe('a field in words', () => {
  it.each([
    ['spec.heightMm', 'height (mm)'],
    ['spec.powerW', 'power (W)'],
    ['returnDays', 'return days'],
    ['energyPriceMinor', 'energy price (minor units)'],
    ['delivery.kind', 'kind'],
  ])('%s', (field, words) => expect(sayField(field)).toBe(words))

  it('tells amounts in money of the currency, with as many decimals as it has', () => {
    const change = { field: 'energyPriceMinor', before: 17, after: 18 }
    expect(sayChange(change, 'USD')).toBe('energy price: 0.17, now 0.18')
    expect(sayChange({ ...change, before: 17.5 }, 'USD')).toBe('energy price: 0.175, now 0.18')
    expect(sayChange(change, 'JPY')).toBe('energy price: 17, now 18')
    expect(sayChange({ field: 'delivery.feeMinor', before: null, after: 695 }, 'USD')).toBe('fee: nothing, now 6.95')
    expect(sayChange({ field: 'returnDays', before: 30, after: 14 }, 'USD')).toBe('return days: 30, now 14')
  })

  it('says what it was and is, what it is where it is new, and no value where none is kept', () => {
    expect(sayChange({ field: 'disabled', before: false, after: true })).toBe('disabled: no, now yes')
    expect(sayChange({ field: 'town', before: 'Tarnwick', after: null })).toBe('town: Tarnwick, now nothing')
    expect(sayChange({ field: 'role', after: 'member' })).toBe('role: member')
    const [one, two] = ['a'.repeat(64), 'b'.repeat(64)]
    expect(sayChange({ field: 'picture', before: null, after: one })).toBe('picture: nothing, now a file')
    expect(sayChange({ field: 'picture', before: one, after: two })).toBe('picture: another one')
    expect(sayChange({ field: 'reach' })).toBe('reach')
  })
})

describe('an import', () => {
  const said = (creates: number, updates: number, unchanged: number) => [
    ...new Set(
      (['product', 'sighting', 'customer'] as const).flatMap((kind) =>
        sayChanges(auditChanges(kind, undefined, { creates, updates, unchanged })),
      ),
    ),
  ]

  it.each([
    [2, 1, 9, '9 unchanged, 2 new, 1 changed'],
    [0, 0, 9, '9 unchanged'],
    [20_000, 0, 0, '20,000 new'],
    [0, 0, 0, 'no rows'],
  ])('is told by its counts, of customers too: %i new, %i changed, %i unchanged', (creates, updates, unchanged, words) =>
    expect(said(creates, updates, unchanged)).toEqual([words]),
  )

  it('whose counts an earlier release did not keep says so', () => {
    expect(sayChanges([{ field: 'creates' }, { field: 'unchanged' }, { field: 'updates' }])).toEqual(['how many rows was not kept'])
  })

  it('is nothing else: other changes are told field by field', () => {
    expect(sayChanges([{ field: 'role', after: 'member' }, { field: 'reach' }])).toEqual(['role: member', 'reach'])
  })
})
