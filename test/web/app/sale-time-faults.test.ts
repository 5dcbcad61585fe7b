import { describe, expect, it } from 'vitest'
import { SaleTimeInput } from '../../../core/pricing/schema.ts'
import { draftFaults } from '../../../web/app/sale-times/draft-faults.ts'
import { bodyOf, emptyDraft, type SaleTimeDraft } from '../../../web/app/sale-times/sale-time-draft.ts'

const sound: SaleTimeDraft = { ...emptyDraft('2026-11-26'), name: 'Autumn', holiday: 'Thanksgiving Day' }

describe('a sale time that is being entered', () => {
  it.each<[string[], Partial<SaleTimeDraft>]>([
    [[], {}],
    [[], { lengthDays: '62', offsetDays: '\u221262' }],
    [['name'], { name: ' ' }],
    [['when.holiday'], { holiday: '' }],
    [['when.offsetDays'], { offsetDays: '63' }],
    [['when.offsetDays'], { offsetDays: '' }],
    [['lengthDays'], { lengthDays: '0' }],
    [['lengthDays'], { lengthDays: '1.5' }],
    [['when.firstDays'], { way: 'dates' }],
    [['when.firstDays'], { way: 'dates', firstDays: '2026-02-30' }],
    [[], { way: 'dates', firstDays: '2026-02-28, 2027-02-28' }],
    [['when.rule'], { way: 'rule', rule: ' ' }],
  ])('has the faults %j of what the server refuses, before it is sent: %o', (fields, part) => {
    const draft = { ...sound, ...part }
    expect(Object.keys(draftFaults(draft))).toEqual(fields)
    expect(SaleTimeInput.safeParse(bodyOf(draft)).success).toBe(fields.length === 0)
  })
})
