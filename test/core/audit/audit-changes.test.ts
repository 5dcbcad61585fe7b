import { describe, expect, it } from 'vitest'
import { AUDIT_SENTENCES } from '../../../core/audit/audit-actions.ts'
import { auditChanges } from '../../../core/audit/audit-changes.ts'

describe('the fields of a change', () => {
  it('are those that differ, with what they were and are', () => {
    const before = { id: '1', version: 3, name: 'Tarnwick Aquatics', taxBasisPoints: 600, archived: false }
    expect(auditChanges('store', before, { ...before, version: 4, taxBasisPoints: 650 })).toEqual([
      { field: 'taxBasisPoints', before: 600, after: 650 },
    ])
  })

  it('look one level into a part of the thing', () => {
    const heater = { spec: { powerW: 150, adjustable: true } }
    expect(auditChanges('product', heater, { spec: { powerW: 200, adjustable: true } })).toEqual([
      { field: 'spec.powerW', before: 150, after: 200 },
    ])
  })

  it('of a person are told with values only for role and disabled', () => {
    const before = { name: 'Ines Marlow', signInName: 'ines', role: 'member', disabled: false }
    const told = auditChanges('person', before, { ...before, name: 'Ines Oakley', role: 'advisor' })
    expect(told).toEqual([{ field: 'name' }, { field: 'role', before: 'member', after: 'advisor' }])
    expect(JSON.stringify(told)).not.toContain('Ines')
  })

  it('of a customer are told without any value', () => {
    expect(auditChanges('customer', { name: 'A', reach: '555-0100' }, { name: 'B', reach: '555-0101' })).toEqual([
      { field: 'name' },
      { field: 'reach' },
    ])
  })

  it('keep free text and what is too long to read by the name of the field alone', () => {
    expect(auditChanges('product', { note: 'ask Bram' }, { note: 'ask Mara' })).toEqual([{ field: 'note' }])
    expect(auditChanges('product', { parts: [] }, { parts: Array.from({ length: 60 }, (_, n) => ({ productId: n })) })).toEqual([
      { field: 'parts' },
    ])
  })

  it('of a new thing are what it is, without a before', () => {
    expect(auditChanges('store', undefined, { name: 'Tarnwick Aquatics', town: null })).toEqual([
      { field: 'name', after: 'Tarnwick Aquatics' },
    ])
  })
})

it('every action has a sentence that says who', () => {
  for (const sentence of Object.values(AUDIT_SENTENCES)) expect(sentence).toMatch(/^\{who\} /)
})
