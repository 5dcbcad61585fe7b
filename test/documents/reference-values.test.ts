import { expect, it } from 'vitest'
import { TOPICS } from '../reference/values/topics.ts'
import { referenceValues } from './reference-values.ts'

it('tells every value of every topic with figure, source and standing, and none that is no figure', () => {
  const text = referenceValues()
  for (const { title, values } of TOPICS) {
    const section = text.split(`## ${title}\n`)[1]?.split('\n## ')[0] ?? ''
    const rows = section.split('\n').filter((line) => /\| (?:published|from memory|common practice|own) \|/.test(line))
    expect(rows).toHaveLength(values.length)
    for (const row of rows) expect(row.split(' | ')).toHaveLength(8)
  }
  expect(text).not.toMatch(/NaN|Infinity|undefined/)
})
