import { format } from 'prettier'
import { LOOKED_AT } from './looked-at.ts'
import { scoreOf, staleOf, totalOf, type Measured, type MeasuredFile } from './measured.ts'

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`

const HEAD = `# What the tests of the physics notice

Written by \`npm run mutation\`; not to be edited. Every expression of \`core/sizing\` and \`core/water\` is changed, one at a time, and the tests of those folders run:
a change that no test notices is a survivor. Words are left alone: an emptied text is no physics, and an emptied verdict does not compile. Properties over drawn
builds are left out, for what one draw finds the next may miss; what else draws, draws three times and always the same. The aim is 85 % or better. It runs beside the other tests, not among them: the better part of an hour.
`

function rowOf(path: string, each: MeasuredFile): string {
  const all = each.killed + each.timedOut + each.survived + each.uncovered
  return `| \`${path}\` | ${all} | ${all === 0 ? '' : percent(scoreOf(each))} | ${each.survived} | ${each.uncovered} |`
}

/** The result in words and tables: whole, by file, and the survivors with what was found when they were looked at. */
export async function mutationDocument(measured: Measured, files: readonly string[]): Promise<string> {
  const rows = Object.entries(measured).filter(([path]) => files.includes(path))
  const total = totalOf(Object.fromEntries(rows))
  const all = total.killed + total.timedOut + total.survived + total.uncovered
  const waiting = staleOf(measured, files)
  const looked = Object.entries(LOOKED_AT).filter(([path]) => (measured[path]?.survivors.length ?? 0) > 0)
  const text = `${HEAD}
**${percent(scoreOf(total))}** of ${all} changes in ${rows.length} of ${files.length} files are noticed; ${total.survived} survive, ${total.uncovered} are reached by no test.
${waiting.length === 0 ? '' : `\nAnother text was counted, or none, of: ${waiting.map((path) => `\`${path}\``).join(', ')}.\n`}
| File | Changes | Noticed | Survive | Unreached |
|---|---|---|---|---|
${rows.map(([path, each]) => rowOf(path, each)).join('\n')}

## Survivors that were looked at

${looked.map(([path, words]) => `- \`${path}\`: ${words}`).join('\n')}

Each one by line stands in \`test/mutation/measured.json\`.
`
  return format(text, { parser: 'markdown', printWidth: 160 })
}
