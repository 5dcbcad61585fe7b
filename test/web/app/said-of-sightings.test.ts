import { expect, it } from 'vitest'
import { sayStanding } from '../../../web/app/moderation/say-standing.ts'
import { VoteButtons } from '../../../web/app/prices/vote-buttons.tsx'
import { boardRow } from './sample-board.ts'
import { goneWords } from '../../../web/app/prices/sighting-words.ts'

it.each([
  [3, 0, '3 sightings'],
  [1, 2, '1 sighting and 2 found gone'],
  [0, 1, '1 found gone'],
])('of %i sightings and %i found gone it says: %s', (sightings, foundGone, words) => {
  expect(sayStanding({ sightings, foundGone })).toBe(words)
})

it('who found a price gone is named to whoever is told', () => {
  expect(goneWords('2026-11-25', 2026, ['Ines Marlow', 'Wes Corran'])).toMatch(/^found gone .*25.* by Ines Marlow, Wes Corran$/u)
})

it('on the board nothing stands in place of a vote that one does not have; where sightings are listed, why', () => {
  const { sighting } = boardRow({ own: true, tie: 'invited_by_you', mayVote: false })
  const buttons = { sighting, personId: 'me', name: 'it', busy: false, onAct: () => undefined }
  expect(VoteButtons({ ...buttons, silent: true })).toBeNull()
  expect(VoteButtons(buttons)).not.toBeNull()
})
