import { expect, it } from 'vitest'
import { caution } from '../../../core/startup/cautions.ts'
import { phraseReaderFirst, readerFirst } from '../../../core/startup/reader-first.ts'
import { METRIC, sayPhrase, US } from '../../../core/units/say.ts'
import { amountIn, stepFor } from './said.ts'
import { sampleSubject } from './sample-subject.ts'

it('tells the reader’s unit first where a figure is told both ways', () => {
  expect(readerFirst(caution('lifting'), US)).toContain(
    'Two people from 44 lb (20 kg) or 3 ft (90 cm) of length on, and more beyond 110 lb (50 kg), one for each 55 lb (25 kg).',
  )
  expect(readerFirst(caution('lifting'), METRIC)).toBe(caution('lifting'))
  expect(readerFirst('1 to 2 mm (1/16 in) in 24 h', US)).toBe('1/16 in (1 to 2 mm) in 24 h')
  const level = stepFor(sampleSubject(), 'level')
  const [first] = level.amounts
  expect(sayPhrase(phraseReaderFirst(first!.value, US), US)).toBe('at most 1/8 in (3 mm)')
  expect(amountIn(level, 'Over the length', METRIC)).toBe('at most 3 mm (1/8 in)')
})
