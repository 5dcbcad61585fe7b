import { describe, expect, it } from 'vitest'
import { AnswerInput, QuoteDraftSchema } from '../../../core/quote/schema.ts'

const buy = (id: string) => ({ id, answer: 'buy', productId: '0198c0de-1111-7222-8333-444455556666', quantity: 1 })
const draft = (changed: Record<string, unknown> = {}) => ({
  need: { livestockId: 'small-tropical' },
  builds: [{ id: 'a', lines: [buy('1')] }],
  ...changed,
})
const faults = (body: unknown) => {
  const read = QuoteDraftSchema.safeParse(body)
  return read.success ? [] : read.error.issues.map(({ path, message }) => `${path.join('.')}: ${message}`)
}

describe('a quote that is edited', () => {
  it('may be unfinished', () => {
    expect(QuoteDraftSchema.parse(draft())).toMatchObject({
      title: '',
      need: { lengthMm: null, look: 'any', exact: {} },
      builds: [{ name: '', lines: [{ storeId: null, note: '' }] }],
      suggestion: null,
    })
  })

  it.each([
    [{ builds: [] }, 'builds: Builds: at least 1.'],
    [{ builds: ['a', 'b', 'c', 'd', 'e'].map((id) => ({ id })) }, 'builds: Builds: 5 of them. At most 4.'],
    [{ builds: [{ id: 'a' }, { id: 'a' }] }, 'builds: Two builds have the id "a". Give each its own.'],
    [{ builds: [{ id: 'a', lines: [buy('1'), buy('1')] }] }, 'builds.0.lines: Two lines of this build have the id "1". Give each its own.'],
    [{ builds: [{ id: 'a', lines: [{ ...buy('1'), quantity: 0 }] }] }, 'builds.0.lines.0.quantity: Quantity is 0. At least 1.'],
    [{ builds: [{ id: 'a', lines: [{ ...buy('1'), quantity: 1000 }] }] }, 'builds.0.lines.0.quantity: Quantity is 1000. At most 999.'],
    [
      { suggestion: { buildId: 'z', reason: '' } },
      'suggestion.buildId: The suggested build is not in this quote. Choose one that is, or none.',
    ],
    [
      { need: { livestockId: 'x', lengthMm: 5 } },
      'need.lengthMm: Length is 5 mm. A tank is between 100 and 4000 mm long. Was it in inches or centimetres?',
    ],
    [
      { need: { livestockId: 'x', exact: { coldestRoomC: 65 } } },
      'need.exact.coldestRoomC: Coldest the room gets is 65 °C. For a room and its water it is between -5 and 35 °C. Was it in °F?',
    ],
    [
      { need: { livestockId: 'x', exact: { coldestRoomC: 25, warmestRoomC: 20 } } },
      'need.exact.warmestRoomC: The coldest room is warmer than the warmest: 25 °C and 20 °C. Swap them, or correct one.',
    ],
  ])('is refused where it could be read two ways or is absurd: case %#', (changed, message) => {
    expect(faults(draft(changed))).toEqual([message])
  })

  it('checks the spec of owned gear by the kind of its slot', () => {
    const owned = (slot: string, spec: unknown) =>
      draft({ builds: [{ id: 'a', lines: [{ id: '1', answer: 'owned', slot, description: 'an old one', spec }] }] })
    expect(faults(owned('heat', { powerW: 100 }))).toEqual([])
    expect(faults(owned('heat', null))).toEqual([])
    expect(faults(owned('heat', { lengthMm: 200, ratedFlowLph: 5 }))).toEqual([
      'builds.0.lines.0.spec: Spec has no field "ratedFlowLph". Check the spelling, or leave it out.',
    ])
    expect(faults(owned('magic', null))[0]).toContain('Slot is one of: hold_water')
  })
})

describe('a customer’s answer', () => {
  it('names the build that is accepted', () => {
    expect(AnswerInput.safeParse({ revision: 1, answer: 'accepted' }).error?.issues[0]).toMatchObject({
      path: ['letter'],
      message: 'Choose which build you accept.',
    })
    expect(AnswerInput.safeParse({ revision: 1, answer: 'accepted', letter: 'B' }).success).toBe(true)
    expect(AnswerInput.safeParse({ revision: 1, answer: 'declined' }).success).toBe(true)
  })
})
