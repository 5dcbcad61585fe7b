import { existsSync, globSync, readFileSync, writeFileSync } from 'node:fs'
import { mutationDocument } from './document.ts'
import { measuredOf, type Measured } from './measured.ts'
import { measure } from './one-start.ts'

/**
 * `npm run mutation [part of a path …]`: changes the physics one expression at a time and says which changes no test notices. Some files at a time, so that what is
 * done is kept when it is stopped; a whole run takes a quarter of an hour or more on one core. Writes test/mutation/measured.json and docs/mutation.md.
 */
const MEASURED = 'test/mutation/measured.json'
/** So many files share a start, and are lost together when it is stopped. */
const AT_ONCE = 16

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
