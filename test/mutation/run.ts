import { spawnSync } from 'node:child_process'
import { existsSync, globSync, readFileSync, writeFileSync } from 'node:fs'
import { mutationDocument } from './document.ts'
import type { Measured, MeasuredFile } from './measured.ts'

/**
 * `npm run mutation [part of a path …]`: changes the physics one expression at a time and says which changes no test notices. File by file, so that what is
 * done is kept when it is stopped; a whole run takes an hour or more on one core. Writes test/mutation/measured.json and docs/mutation.md.
 */
const MEASURED = 'test/mutation/measured.json'
const REPORT = '.types/mutation/report.json'

interface Reported {
  files: Record<
    string,
    {
      source: string
      mutants: Array<{ mutatorName: string; replacement?: string; status: string; location: { start: Place; end: Place } }>
    }
  >
}
interface Place {
  line: number
  column: number
}

const wanted = process.argv.slice(2)
const files = globSync(['core/water/*.ts', 'core/sizing/*.ts'])
  .map((path) => path.replaceAll('\\', '/'))
  .filter((path) => wanted.length === 0 || wanted.some((part) => path.includes(part)))
  .sort()
if (files.length === 0) {
  console.error(`No file of core/water or core/sizing is called "${wanted.join(' ')}".`)
  process.exit(1)
}

const readMeasured = (): Measured => (existsSync(MEASURED) ? (JSON.parse(readFileSync(MEASURED, 'utf8')) as Measured) : {})

/** What stood between two places, in one line. */
function textBetween(source: string, start: Place, end: Place): string {
  const lines = source.split('\n').slice(start.line - 1, end.line)
  const text = lines.map((line, index) =>
    line.slice(index === 0 ? start.column - 1 : 0, index === lines.length - 1 ? end.column - 1 : undefined),
  )
  return short(text.join(' '))
}
const MOST_SIGNS = 90
const short = (text: string): string => {
  const one = text.replaceAll(/\s+/g, ' ')
  return one.length > MOST_SIGNS ? `${one.slice(0, MOST_SIGNS)}…` : one
}

function measuredOf({ source, mutants }: Reported['files'][string]): MeasuredFile {
  const of = (status: string) => mutants.filter((mutant) => mutant.status === status)
  const open = [...of('Survived'), ...of('NoCoverage')].sort((a, b) => a.location.start.line - b.location.start.line)
  return {
    killed: of('Killed').length,
    timedOut: of('Timeout').length,
    survived: of('Survived').length,
    uncovered: of('NoCoverage').length,
    survivors: open.map(({ mutatorName, replacement, location: { start, end } }) => ({
      line: start.line,
      what: mutatorName,
      was: textBetween(source, start, end),
      became: short(replacement ?? ''),
    })),
  }
}

/** So many files share one start, and are lost together when it is stopped. */
const AT_ONCE = 5

function measure(some: readonly string[]): Reported['files'] | null {
  const stryker = 'node_modules/@stryker-mutator/core/bin/stryker.js'
  const done = spawnSync(process.execPath, [stryker, 'run', 'test/mutation/stryker.json', '--mutate', some.join(',')], {
    encoding: 'utf8',
    env: { ...process.env, MUTATED: some.join(',') },
  })
  if (done.status === 0) return (JSON.parse(readFileSync(REPORT, 'utf8')) as Reported).files
  console.error(`${some.join(', ')} could not be measured:\n${(done.stdout + done.stderr).slice(-2000)}`)
  return null
}

/** Read anew each time: two runs over different files may stand side by side. */
function keep(found: Measured): void {
  const all = Object.entries({ ...readMeasured(), ...found }).sort(([a], [b]) => (a < b ? -1 : 1))
  writeFileSync(MEASURED, JSON.stringify(Object.fromEntries(all), null, 1) + '\n')
}

let failed = 0
for (let from = 0; from < files.length; from += AT_ONCE) {
  const some = files.slice(from, from + AT_ONCE)
  const started = performance.now()
  const report = measure(some)
  if (report === null) {
    failed += 1
    continue
  }
  const found = Object.fromEntries(some.map((file) => [file, measuredOf(report[file] ?? { source: '', mutants: [] })]))
  keep(found)
  for (const [file, { killed, timedOut, survived, uncovered }] of Object.entries(found))
    console.log(`${file}: ${killed + timedOut} noticed, ${survived} not, ${uncovered} reached by no test`)
  const seconds = ((performance.now() - started) / 1000).toFixed(0)
  console.log(`${Math.min(from + AT_ONCE, files.length)} of ${files.length} files (${seconds} s)`)
}
writeFileSync('docs/mutation.md', await mutationDocument(readMeasured(), globSync(['core/water/*.ts', 'core/sizing/*.ts'])))
process.exit(failed === 0 ? 0 : 1)
