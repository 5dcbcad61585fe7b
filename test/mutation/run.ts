import { existsSync, globSync, readFileSync, writeFileSync } from 'node:fs'
import { mutationDocument } from './document.ts'
import { measuredOf, staleOf, type Measured } from './measured.ts'
import { measure } from './one-start.ts'

/**
 * `npm run mutation [changed] [part of a path …]`: changes the physics one expression at a time and says which changes no test notices. Some files at a time, so
 * that what is done is kept when it is stopped; a whole run takes the better part of an hour on one core. `changed` leaves out what still reads as when it was
 * counted. Writes test/mutation/measured.json and docs/mutation.md.
 */
const MEASURED = 'test/mutation/measured.json'
/** So many files share a start, and are lost together when it is stopped. */
const AT_ONCE = 16

const CHANGED = 'changed'
const wanted = process.argv.slice(2).filter((word) => word !== CHANGED)
const all = globSync(['core/water/*.ts', 'core/sizing/*.ts']).map((path) => path.replaceAll('\\', '/'))
const asked = process.argv.includes(CHANGED) ? staleOf(readMeasured(), all) : all
const files = asked.filter((path) => wanted.length === 0 || wanted.some((part) => path.includes(part))).sort()
if (files.length === 0 && !process.argv.includes(CHANGED)) {
  console.error(`No file of core/water or core/sizing is called "${process.argv.slice(2).join(' ')}".`)
  process.exit(1)
}

function readMeasured(): Measured {
  return existsSync(MEASURED) ? (JSON.parse(readFileSync(MEASURED, 'utf8')) as Measured) : {}
}

/** Read anew each time: two runs over different files may stand side by side. A count of a file that is gone goes with it. */
function keep(found: Measured): void {
  const counts = { ...readMeasured(), ...found }
  const there = all.toSorted().flatMap((path) => (counts[path] ? [[path, counts[path]] as const] : []))
  writeFileSync(MEASURED, JSON.stringify(Object.fromEntries(there), null, 1) + '\n')
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
  const found = Object.fromEntries(
    some.map((file) => [file, measuredOf(report[file] ?? { source: readFileSync(file, 'utf8'), mutants: [] })]),
  )
  keep(found)
  for (const [file, { killed, timedOut, survived, uncovered }] of Object.entries(found))
    console.log(`${file}: ${killed + timedOut} noticed, ${survived} not, ${uncovered} reached by no test`)
  const seconds = ((performance.now() - started) / 1000).toFixed(0)
  console.log(`${Math.min(from + AT_ONCE, files.length)} of ${files.length} files (${seconds} s)`)
}
writeFileSync('docs/mutation.md', await mutationDocument(readMeasured(), all.toSorted()))
process.exit(failed === 0 ? 0 : 1)
