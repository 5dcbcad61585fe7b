import { expect, it } from 'vitest'
import { sayRebuilt } from '../../api/service/say-rebuilt.ts'

const rebuilt = (changed: number) => ({ pairs: 224, changed, some: [] })
const NAMES = ['Torvane 100 W at Upriver', 'Pellick H-300 at Kettle Lane']

it('says of summaries that were right that nothing was changed', () => {
  expect(sayRebuilt(rebuilt(0), true, [])).toBe(
    'All 224 summaries (one for each product at a store) say what their sightings say. Nothing was changed.',
  )
})

it('says of those that an older backup brought that this is usual and nothing is left to do', () => {
  const words = sayRebuilt(rebuilt(224), false, NAMES)
  expect(words).toContain('224 had still been as an older release leaves them')
  expect(words).toContain('nothing is left to do')
  expect(words).not.toContain('Torvane')
})

it('names of those that were wrong the first, how many more there are, and what to look at', () => {
  const words = sayRebuilt(rebuilt(3), true, NAMES)
  expect(words.split('\n').slice(0, 4)).toEqual([
    'Made the 224 summaries (one for each product at a store) anew. 3 did not say what the sightings say, and do now:',
    '  Torvane 100 W at Upriver',
    '  Pellick H-300 at Kettle Lane',
    '  and 1 more',
  ])
  expect(words).toContain('quoted of them lately')
  expect(sayRebuilt(rebuilt(1), true, NAMES.slice(1))).toContain('1 did not say what the sightings say, and does now:')
})
