import { expect, it } from 'vitest'
import { FINDING_CAUTIONS } from '../../../core/sizing/finding-cautions.ts'
import { CAUTIONS } from '../../../core/startup/cautions.ts'

const sentencesOf = (text: string): string[] => text.split(/(?<=[.;:])\s+/).map((sentence) => sentence.toLowerCase().replace(/[.;:]$/, ''))

it('takes a caution that the one table has from there, and repeats none of its sentences in others', () => {
  const table = CAUTIONS.map(({ text }) => text)
  const own = Object.values(FINDING_CAUTIONS).filter((text) => !table.includes(text))
  expect(own).toEqual([
    FINDING_CAUTIONS.floor,
    FINDING_CAUTIONS.mains,
    FINDING_CAUTIONS.mains_230,
    FINDING_CAUTIONS.load,
    FINDING_CAUTIONS.tipping,
    FINDING_CAUTIONS.glass,
    FINDING_CAUTIONS.drain,
  ])
  const told = new Set(table.flatMap(sentencesOf))
  expect(own.flatMap(sentencesOf).filter((sentence) => told.has(sentence))).toEqual([])
})
