import { registerHooks } from 'node:module'
import { resolve } from 'node:path'
import { pathToFileURL } from 'node:url'
import { parentPort, workerData } from 'node:worker_threads'
import type { CollectedTest } from './collected-tests.ts'

/** What a run is asked. Without a filter all tests run, each file loaded when it is reached, with the mutant at work from the first. */
export interface Asked {
  files: readonly string[]
  activeMutant?: string
  hitLimit?: number
  filter?: readonly string[]
  /** The first test that fails ends the run. */
  bail: boolean
}
export interface RunTest {
  id: string
  fileName: string
  timeSpentMs: number
  /** Absent where it passed. */
  failure?: string
}
export interface Answered {
  tests: RunTest[]
  coverage: unknown
  hitCount: number
  /** What could not be loaded. */
  broken?: string
}

/** What the changed code and this run tell each other; its names are the tool's. */
interface Shared {
  activeMutant?: string | undefined
  hitCount?: number
  hitLimit?: number | undefined
  currentTestId?: string | undefined
  mutantCoverage?: unknown
}
const NAMESPACE = '__stryker__'
const shared = ((globalThis as unknown as Record<string, Shared | undefined>)[NAMESPACE] ??= {})

const COLLECTED = new URL('collected-tests.ts', import.meta.url).href
registerHooks({
  resolve: (specifier, context, next) =>
    specifier === 'vitest' && context.parentURL !== COLLECTED ? { url: COLLECTED, shortCircuit: true } : next(specifier, context),
})
const { runTest, startAfresh, testsIn } = await import('./collected-tests.ts')
await import('./few-draws.ts')

const testsOf = (file: string): Promise<CollectedTest[]> => testsIn(file, () => import(pathToFileURL(resolve(file)).href))
const wordsOf = (thrown: unknown): string => (thrown instanceof Error ? thrown.message : String(thrown))

async function runOne(test: CollectedTest): Promise<RunTest> {
  const { id, fileName } = test
  const started = performance.now()
  shared.currentTestId = id
  const failure = await runTest(test).then(
    () => undefined,
    (thrown: unknown) => wordsOf(thrown),
  )
  shared.currentTestId = undefined
  return { id, fileName, timeSpentMs: performance.now() - started, ...(failure === undefined ? {} : { failure }) }
}

/** A mutant that only runs after loading is let in after it; another is at work from the first. */
async function run({ files, activeMutant, hitLimit, filter, bail }: Asked): Promise<Answered> {
  const wanted = filter && new Set(filter)
  const reached = wanted ? files.filter((file) => filter.some((id) => id.startsWith(`${file}#`))) : files
  shared.activeMutant = wanted ? undefined : activeMutant
  if (wanted) for (const file of reached) await testsOf(file)
  startAfresh()
  Object.assign(shared, { activeMutant, hitLimit, hitCount: 0 })
  const tests: RunTest[] = []
  let broken: string | undefined
  for (const file of reached) {
    const found = await testsOf(file).catch((thrown: unknown) => {
      broken ??= `${file}: ${wordsOf(thrown)}`
      return []
    })
    for (const test of found.filter(({ id }) => wanted?.has(id) ?? true)) {
      tests.push(await runOne(test))
      if (bail && tests.at(-1)?.failure !== undefined) return { tests, coverage: null, hitCount: shared.hitCount ?? 0 }
    }
  }
  shared.activeMutant = undefined
  return { tests, coverage: shared.mutantCoverage, hitCount: shared.hitCount ?? 0, ...(broken === undefined ? {} : { broken }) }
}

const port = parentPort
if (port === null) throw new Error('made to be run as a thread')
const answer = async (asked: Asked): Promise<void> => port.postMessage(await run(asked))
port.on('message', (asked: Asked) => void answer(asked))
if (workerData !== null) await answer(workerData as Asked)
