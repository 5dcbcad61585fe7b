import { describe, expect, it } from 'vitest'
import { reckonedOnPaper } from '../../../api/pdf/reckoned-on-paper.ts'
import { tellerOf } from '../../../api/pdf/teller.ts'
import { assembleBuild } from '../../../core/quote/assemble.ts'
import { sampleRevision } from '../../support/sample-revision.ts'

const document = sampleRevision({ builds: 1 })
const paper = reckonedOnPaper(assembleBuild(document.inputs, 0), document, tellerOf(document))

describe('how it was reckoned, on paper', () => {
  it('tells each sum with the check that it is of, line after line, and what went in apart', () => {
    const spare = paper?.checks.find(({ worked }) => worked.some(({ name }) => name === 'Heat put in'))
    expect(spare?.worked.map(({ name }) => name)).toEqual([
      'Heat put in',
      'Found by trying until as much is lost',
      'Lost there through panes and surface',
      'Lost there with what evaporates',
      'Heat lost, in all',
    ])
    expect(spare?.from).not.toMatch(/heat put in|heat lost/)
    expect(paper?.went.flatMap(({ rows }) => rows.map(({ name }) => name))).not.toContain('Heat lost, in all')
  })
})
