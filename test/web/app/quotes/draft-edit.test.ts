import { describe, expect, it } from 'vitest'
import type { BuildLine } from '../../../../core/quote/draft.ts'
import { editDraft } from '../../../../web/app/quotes/draft-edit.ts'
import { buildOf, sampleDraft } from './sample-draft.ts'

const heater: BuildLine = { id: 'new', answer: 'buy', productId: 'heater-2', quantity: 1, storeId: null, note: '' }
const linesOf = (draft: typeof sampleDraft, buildId: string) =>
  draft.builds.find((build) => build.id === buildId)?.lines.map((line) => line.id)

describe('an edit of the draft', () => {
  it('puts a line where the one it replaces stood', () => {
    const after = editDraft(sampleDraft, { do: 'put_line', buildId: 'a', line: heater, replaces: ['a-heat'] })
    expect(linesOf(after, 'a')).toEqual(['a-tank', 'new', 'a-mat'])
    expect(linesOf(after, 'b')).toEqual(['b-tank', 'b-heat', 'b-mat'])
  })

  it('adds a line last where it replaces none, and changes one in its place', () => {
    const added = editDraft(sampleDraft, { do: 'put_line', buildId: 'a', line: heater, replaces: [] })
    expect(linesOf(added, 'a')).toEqual(['a-tank', 'a-heat', 'a-mat', 'new'])
    const changed = editDraft(added, { do: 'put_line', buildId: 'a', line: { ...heater, id: 'a-tank', quantity: 3 }, replaces: [] })
    expect(changed.builds[0]?.lines[0]).toMatchObject({ id: 'a-tank', quantity: 3 })
  })

  it('leaves the other build the same object, so that its figures are not computed again', () => {
    const after = editDraft(sampleDraft, { do: 'remove_line', buildId: 'a', lineId: 'a-mat' })
    expect(after.builds[1]).toBe(sampleDraft.builds[1])
    expect(linesOf(after, 'a')).toEqual(['a-tank', 'a-heat'])
  })

  it('takes at most four builds and keeps at least one', () => {
    const four = ['c', 'd'].reduce((draft, id) => editDraft(draft, { do: 'add_build', build: buildOf(id, id) }), sampleDraft)
    expect(editDraft(four, { do: 'add_build', build: buildOf('e', 'fifth') })).toBe(four)
    expect(editDraft(four, { do: 'duplicate_build', buildId: 'a', newId: 'e', lineIds: ['1', '2', '3'] })).toBe(four)
    const one = ['b', 'c', 'd'].reduce((draft, buildId) => editDraft(draft, { do: 'remove_build', buildId }), four)
    expect(one.builds.map((build) => build.id)).toEqual(['a'])
    expect(editDraft(one, { do: 'remove_build', buildId: 'a' })).toBe(one)
  })

  it('takes the suggestion away with the build it named', () => {
    expect(editDraft(sampleDraft, { do: 'remove_build', buildId: 'b' }).suggestion).toBeNull()
    expect(editDraft(sampleDraft, { do: 'remove_build', buildId: 'a' }).suggestion).toEqual({ buildId: 'b', reason: 'least money' })
  })

  it('copies a build behind the last, so that no letter moves, with lines of its own', () => {
    const after = editDraft(sampleDraft, { do: 'duplicate_build', buildId: 'a', newId: 'z', lineIds: ['1', '2', '3'] })
    expect(after.builds.map((build) => build.id)).toEqual(['a', 'b', 'z'])
    expect(after.builds[2]?.lines).toEqual(sampleDraft.builds[0]?.lines.map((line, index) => ({ ...line, id: String(index + 1) })))
  })

  it('gives a copy no name of its own: it is called after its tank, and the original keeps its name', () => {
    const after = editDraft(sampleDraft, { do: 'duplicate_build', buildId: 'a', newId: 'z', lineIds: ['1', '2', '3'] })
    expect(after.builds.map((build) => build.name)).toEqual(['Long and deep', 'One box', ''])
  })

  it('fills a build in one go and takes it back in one', () => {
    const before = sampleDraft.builds[0]?.lines ?? []
    const filled = editDraft(sampleDraft, { do: 'set_lines', buildId: 'a', lines: [...before, heater] })
    expect(linesOf(filled, 'a')).toEqual(['a-tank', 'a-heat', 'a-mat', 'new'])
    expect(editDraft(filled, { do: 'set_lines', buildId: 'a', lines: before })).toEqual(sampleDraft)
  })

  it('gives a figure back to its default when it is cleared', () => {
    const after = editDraft(sampleDraft, { do: 'exact', change: { coldestRoomC: undefined, warmestRoomC: 26 } })
    expect(after.need.exact).toEqual({ warmestRoomC: 26 })
    expect('coldestRoomC' in after.need.exact).toBe(false)
  })

  it('changes nothing in a build that is gone', () => {
    expect(editDraft(sampleDraft, { do: 'remove_line', buildId: 'gone', lineId: 'a-mat' })).toBe(sampleDraft)
  })
})
