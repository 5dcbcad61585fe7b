import { describe, expect, it } from 'vitest'
import { LIVESTOCK_GROUPS } from '../../../core/catalog/livestock.ts'
import { LivestockGroupInput } from '../../../core/livestock/schema.ts'
import { METRIC, US } from '../../../core/units/say.ts'
import { draftOfGroup, EMPTY_GROUP, readGroup } from '../../../web/app/livestock/group-draft.ts'

describe('the form of a livestock group', () => {
  it.each(LIVESTOCK_GROUPS)('gives $name back to the last digit, in either system of units, as the server takes it', (group) => {
    for (const reader of [METRIC, US]) {
      const { body, faults } = readGroup(draftOfGroup(group, reader), reader, group)
      const { id: _id, standing: _standing, ...fields } = group
      expect(faults).toEqual({})
      expect(body).toEqual(fields)
      expect(LivestockGroupInput.safeParse(body).error).toBeUndefined()
    }
  })
  it('tells marks out of their order at the warmer one, in the reader’s units', () => {
    const [group] = LIVESTOCK_GROUPS
    if (!group) throw new Error('there are no groups')
    const draft = draftOfGroup(group, US)
    const { faults } = readGroup({ ...draft, figures: { ...draft.figures, targetC: '86 °F' } }, US, group)
    // 28 °C is 82.4 °F.
    expect(faults).toEqual({ highestC: 'Highest comfortable is 82.4 °F, and “Target” is 86 °F. Enter at least 86 °F.' })
  })
  it('asks for a name, a source and every figure that must be there', () => {
    expect(Object.keys(readGroup(EMPTY_GROUP, METRIC).faults).toSorted()).toEqual([
      'dangerC', 'feedGramsPerDay', 'flowFloorPerHour', 'highestC', 'lowestC', 'name', 'smallestVolumeL', 'source', 'targetC',
    ]) // prettier-ignore
  })
})
