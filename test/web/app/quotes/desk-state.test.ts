import { describe, expect, it } from 'vitest'
import { deskReducer, openDesk, type DeskEvent, type DeskState } from '../../../../web/app/quotes/desk-state.ts'
import { copiedDraft } from '../../../../web/app/quotes/quote-copy.ts'
import { sampleDraft, sampleView } from './sample-draft.ts'

const title = (text: string): DeskEvent => ({ type: 'edit', edit: { do: 'title', title: text } })
const play = (state: DeskState, ...events: DeskEvent[]): DeskState => events.reduce(deskReducer, state)
const opened = openDesk(sampleView(4, sampleDraft), null)

describe('the desk while it saves', () => {
  it('is saved after the server took what is on the screen', () => {
    const draft = { ...sampleDraft, title: 'Mine' }
    const state = play(opened, title('Mine'), { type: 'sending' }, { type: 'stored', view: sampleView(5, draft) })
    expect(state.saving).toEqual({ state: 'saved' })
    expect(state.view.version).toBe(5)
  })

  it('keeps what was typed while a save was on its way, and still has it to send', () => {
    const sent = { ...sampleDraft, title: 'M' }
    const state = play(opened, title('M'), { type: 'sending' }, title('Mine'), { type: 'stored', view: sampleView(5, sent) })
    expect(state.draft.title).toBe('Mine')
    expect(state.saving).toEqual({ state: 'edited' })
    expect(state.view.draft.title).toBe('M')
  })

  it('takes links that were made anew, and keeps what was typed and is not sent yet', () => {
    const links = { quote: 'http://localhost:8080/q/new', setup: 'http://localhost:8080/s/old' }
    const state = play(opened, title('Mine'), { type: 'links', links })
    expect(state.view.links).toEqual(links)
    expect(state.draft.title).toBe('Mine')
    expect(state.saving).toEqual({ state: 'edited' })
  })

  it('keeps the change when a save fails', () => {
    const state = play(opened, title('Mine'), { type: 'sending' }, { type: 'failed', words: 'No signal.' })
    expect(state.draft.title).toBe('Mine')
    expect(state.saving).toEqual({ state: 'failed', words: 'No signal.' })
  })

  it('lays my change over theirs when I keep mine, and sends it on their version', () => {
    const theirs = sampleView(6, { ...sampleDraft, note: 'Theirs' })
    const clash = play(opened, title('Mine'), { type: 'sending' }, { type: 'conflict', theirs })
    expect(clash.draft.title).toBe('Mine')
    const kept = play(clash, { type: 'keep_mine' })
    expect(kept.draft).toMatchObject({ title: 'Mine', note: 'Theirs' })
    expect(kept.view.version).toBe(6)
    expect(kept.saving).toEqual({ state: 'edited' })
  })

  it('shows theirs when I take theirs', () => {
    const theirs = sampleView(6, { ...sampleDraft, note: 'Theirs' })
    const taken = play(opened, title('Mine'), { type: 'sending' }, { type: 'conflict', theirs }, { type: 'take_theirs' })
    expect(taken.draft).toEqual(theirs.draft)
    expect(taken.saving).toEqual({ state: 'saved' })
  })

  it('stays in conflict while I go on editing', () => {
    const theirs = sampleView(6, { ...sampleDraft, note: 'Theirs' })
    const state = play(opened, title('M'), { type: 'sending' }, { type: 'conflict', theirs }, title('Mine'))
    expect(state.saving.state).toBe('conflict')
    expect(state.draft.title).toBe('Mine')
  })
})

describe('a change kept in this browser', () => {
  const draft = { ...sampleDraft, title: 'Kept' }
  it('is on the screen again, to be saved, when nobody saved since', () => {
    const state = openDesk(sampleView(4, sampleDraft), { baseVersion: 4, base: sampleDraft, draft })
    expect(state.draft.title).toBe('Kept')
    expect(state.saving).toEqual({ state: 'edited' })
  })
  it('is a conflict, with its own base, when somebody saved since', () => {
    const state = openDesk(sampleView(7, { ...sampleDraft, note: 'Theirs' }), { baseVersion: 4, base: sampleDraft, draft })
    expect(state.saving.state).toBe('conflict')
    expect(play(state, { type: 'keep_mine' }).draft).toMatchObject({ title: 'Kept', note: 'Theirs' })
  })
  it('is forgotten when the server has the same', () => {
    expect(openDesk(sampleView(7, draft), { baseVersion: 4, base: sampleDraft, draft }).saving).toEqual({ state: 'saved' })
  })
})

it('keeps the lists it had when a fetch brings nothing new, so that nothing is computed again', () => {
  const prices = [{ productId: 'p', storeId: 's' }]
  const once = play(opened, { type: 'priced', products: [], prices })
  const twice = play(once, { type: 'priced', products: [], prices: [{ ...prices[0]! }] })
  expect(once.prices).toHaveLength(1)
  expect(twice.prices).toBe(once.prices)
})

describe('a quote that was accepted', () => {
  const accepted = { ...sampleView(9, sampleDraft), state: 'accepted' as const }
  it('takes no edit', () => {
    const state = openDesk(accepted, null)
    expect(play(state, title('Too late'))).toBe(state)
  })
  it('while a change was on its way shows what was accepted and keeps the change', () => {
    const state = play(opened, title('Too late'), { type: 'sending' }, { type: 'closed', theirs: accepted })
    expect(state.draft).toEqual(sampleDraft)
    expect(state.saving).toMatchObject({ state: 'closed', mine: { title: 'Too late' } })
    expect(play(state, { type: 'discard' }).saving).toEqual({ state: 'saved' })
  })
  it('offers a change kept in this browser, instead of trying to save it', () => {
    const kept = { baseVersion: 9, base: sampleDraft, draft: { ...sampleDraft, title: 'Kept' } }
    expect(openDesk(accepted, kept).saving).toEqual({ state: 'closed', mine: kept.draft })
  })
  it('is copied to a new quote with a last day that is still to come, or none', () => {
    expect(copiedDraft({ ...sampleDraft, standsUntil: '2026-10-01' }, { asOf: '2026-10-20' })).toEqual({
      ...sampleDraft,
      standsUntil: null,
    })
    expect(copiedDraft({ ...sampleDraft, standsUntil: '2026-10-20' }, { asOf: '2026-10-20' }).standsUntil).toBe('2026-10-20')
    const valley = { id: 'valley', name: 'Valley', storeIds: [], version: 1 }
    const within = { ...sampleDraft, need: { ...sampleDraft.need, regionId: 'valley' } }
    expect(copiedDraft(within, { asOf: '2026-10-20', regions: [valley] }).need.regionId).toBe('valley')
    expect(copiedDraft(within, { asOf: '2026-10-20' }).need).toEqual({ ...within.need, regionId: null })
  })
})
