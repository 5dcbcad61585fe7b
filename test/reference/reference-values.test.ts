import { existsSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { missOf, mostOf } from './values/reference-value.ts'
import { TOPICS } from './values/topics.ts'

/** Room for the last digit of a sum that is exact on paper. */
const LAST_DIGIT = 1e-12

describe.each(TOPICS)('$title', ({ values, alsoIn }) => {
  it.each(values)('$quantity: $value $unit ($standing: $source)', (row) => {
    expect(missOf(row)).toBeLessThanOrEqual(mostOf(row) + LAST_DIGIT)
  })

  it('names files that are there, and a source beside every value', () => {
    const repository = new URL('../../', import.meta.url)
    for (const file of [...alsoIn, ...values.map(({ by }) => by)]) expect(existsSync(new URL(file, repository)), file).toBe(true)
    for (const { source } of values) expect(source.length).toBeGreaterThan(5)
  })
})

it('tells no value of one source twice', () => {
  const names = TOPICS.flatMap(({ title, values }) => values.map(({ quantity, source, unit }) => `${title} ${quantity} ${source} ${unit}`))
  expect(new Set(names).size).toBe(names.length)
})
