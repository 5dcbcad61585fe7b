import { describe, expect, it } from 'vitest'
import { fc, test } from '@fast-check/vitest'
import type { QuoteDraft } from '../../../../core/quote/draft.ts'
import { editDraft, type DraftEdit } from '../../../../web/app/quotes/draft-edit.ts'
import { mergeDrafts, type SlotOf } from '../../../../web/app/quotes/draft-merge.ts'
import { sampleDraft } from './sample-draft.ts'

const edited = (...edits: DraftEdit[]): QuoteDraft => edits.reduce(editDraft, sampleDraft)

describe('two advisors on one quote', () => {
  it('keeps both changes where they touch different things', () => {
    const mine = edited({ do: 'need', change: { budgetMinor: 70000 } }, { do: 'remove_line', buildId: 'a', lineId: 'a-mat' })
    const theirs = edited(
      { do: 'exact', change: { warmestRoomC: 27 } },
      { do: 'describe_build', buildId: 'b', change: { name: 'All in one' } },
    )
    const { draft, clashes } = mergeDrafts(sampleDraft, mine, theirs)
    expect(clashes).toEqual([])
    expect(draft.need).toMatchObject({ budgetMinor: 70000, exact: { coldestRoomC: 17, warmestRoomC: 27 } })
    expect(draft.builds[0]?.lines.map((line) => line.id)).toEqual(['a-tank', 'a-heat'])
    expect(draft.builds[1]?.name).toBe('All in one')
  })

  it('keeps mine where both changed the same, and says what theirs was', () => {
    const { draft, clashes } = mergeDrafts(sampleDraft, edited({ do: 'title', title: 'Mine' }), edited({ do: 'title', title: 'Theirs' }))
    expect(draft.title).toBe('Mine')
    expect(clashes).toEqual([{ path: 'draft.title', mine: 'Mine', theirs: 'Theirs' }])
  })

  it('is no clash when both made the same change', () => {
    const same = edited({ do: 'note', note: 'Bring the stand first.' })
    expect(mergeDrafts(sampleDraft, same, same)).toEqual({ draft: same, clashes: [] })
  })

  it('keeps a line that one removed and the other changed', () => {
    const line = sampleDraft.builds[0]?.lines[1]
    if (line?.answer !== 'buy') throw new Error('the sample has no heater')
    const mine = edited({ do: 'put_line', buildId: 'a', line: { ...line, quantity: 3 }, replaces: [] })
    const theirs = edited({ do: 'remove_line', buildId: 'a', lineId: 'a-heat' })
    const { draft, clashes } = mergeDrafts(sampleDraft, mine, theirs)
    expect(draft.builds[0]?.lines.find((kept) => kept.id === 'a-heat')).toMatchObject({ quantity: 3 })
    expect(clashes.map((clash) => clash.path)).toEqual(['build:a.line:a-heat'])
  })

  it('drops the suggestion with the build it named', () => {
    expect(mergeDrafts(sampleDraft, sampleDraft, edited({ do: 'remove_build', buildId: 'b' })).draft.suggestion).toBeNull()
  })

  test.prop([fc.constantFrom('a', 'b'), fc.string(), fc.string(), fc.nat(900), fc.nat(900)])(
    'takes over theirs whole when I changed nothing, and mine whole when they changed nothing',
    (buildId, name, note, budget, line) => {
      const change = edited(
        { do: 'describe_build', buildId, change: { name } },
        { do: 'note', note },
        { do: 'need', change: { budgetMinor: budget } },
        {
          do: 'put_line',
          buildId,
          line: { id: `n${line}`, answer: 'not_needed', slot: 'cover', reason: note },
          replaces: [`${buildId}-mat`],
        },
      )
      expect(mergeDrafts(sampleDraft, sampleDraft, change)).toEqual({ draft: change, clashes: [] })
      expect(mergeDrafts(sampleDraft, change, sampleDraft).draft).toEqual({ ...change, builds: expect.anything() })
      const lineIds = (draft: QuoteDraft) => draft.builds.map((build) => build.lines.map((kept) => kept.id).toSorted())
      expect(lineIds(mergeDrafts(sampleDraft, change, sampleDraft).draft)).toEqual(lineIds(change))
    },
  )
})

describe('one slot filled on both sides', () => {
  const kinds: Record<string, 'light' | 'heat' | 'hold_water'> = { 'light-1': 'light', 'light-2': 'light', 'heater-1': 'heat', 'heater-2': 'heat', 'tank-1': 'hold_water' } // prettier-ignore
  const slotOf: SlotOf = (line) => (line.answer === 'buy' ? kinds[line.productId] : line.slot)
  const put = (productId: string, id: string, replaces: string[] = []): DraftEdit => ({
    do: 'put_line', buildId: 'a', replaces, line: { id, answer: 'buy', productId, quantity: 1, storeId: null, note: '' },
  }) // prettier-ignore
  const boughtIn = (draft: QuoteDraft) => draft.builds[0]?.lines.flatMap((line) => (line.answer === 'buy' ? [line.productId] : []))
  const merge = (mine: DraftEdit, theirs: DraftEdit) => mergeDrafts(sampleDraft, edited(mine), edited(theirs), slotOf)

  it('is one clash, and only mine is charged', () => {
    const { draft, clashes } = merge(put('light-1', 'm'), put('light-2', 't'))
    expect(boughtIn(draft)).toEqual(['tank-1', 'heater-1', 'light-1'])
    expect(clashes.map((clash) => clash.path)).toEqual(['build:a.slot:light'])
    expect(clashes[0]?.theirs).toMatchObject([{ productId: 'light-2' }])
  })
  it('with the same thing is no clash, and is charged once', () => {
    const { draft, clashes } = merge(put('light-1', 'm'), put('light-1', 't'))
    expect(boughtIn(draft)).toEqual(['tank-1', 'heater-1', 'light-1'])
    expect(clashes).toEqual([])
  })
  it('is mine where I replaced what they changed', () => {
    const changed: DraftEdit = { do: 'put_line', buildId: 'a', replaces: [], line: { id: 'a-heat', answer: 'buy', productId: 'heater-1', quantity: 5, storeId: null, note: '' } } // prettier-ignore
    const { draft, clashes } = merge(put('heater-2', 'm', ['a-heat']), changed)
    expect(boughtIn(draft)).toEqual(['tank-1', 'heater-2'])
    expect(clashes.map((clash) => clash.path)).toEqual(['build:a.slot:heat'])
  })
  it('leaves two slots alone that each side filled one of', () => {
    const { draft, clashes } = merge(put('light-1', 'm'), put('heater-2', 't', ['a-heat']))
    expect(new Set(boughtIn(draft))).toEqual(new Set(['tank-1', 'light-1', 'heater-2']))
    expect(clashes).toEqual([])
  })
})
