import { globSync } from 'node:fs'
import { registerHooks } from 'node:module'
import { resolve } from 'node:path'
import { pathToFileURL } from 'node:url'
import { parentPort, workerData } from 'node:worker_threads'
import { loadOf, type Answered, type Asked, type RunTest } from './asked.ts'
import type { CollectedTest } from './collected-tests.ts'

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
const imports = new Map<string, string[]>()
registerHooks({
  resolve(specifier, context, next) {
    const { parentURL = '' } = context
    const found = specifier === 'vitest' && parentURL !== COLLECTED ? { url: COLLECTED, shortCircuit: true } : next(specifier, context)
    if (found.url.startsWith('file:')) imports.set(parentURL, [...(imports.get(parentURL) ?? []), found.url])
    return found
  },
})
const { runTest, startAfresh, testsIn } = await import('./collected-tests.ts')
await import('./few-draws.ts')

const importOf = (file: string): Promise<unknown> => import(pathToFileURL(resolve(file)).href)

/** What a `describe` reckons for itself while its file loads is put down to that loading. */
async function testsOf(file: string): Promise<CollectedTest[]> {
  shared.currentTestId = loadOf(file)
  return testsIn(file, () => importOf(file)).finally(() => (shared.currentTestId = undefined))
}

/** Every rule, and whatever several tests share, is loaded before the first of them: what is at work then is so for all. */
async function loadShared(): Promise<void> {
  const found = globSync('{core/{sizing,water},test/core/sizing,test/reference}/*.ts').filter((path) => !/\.(test|d)\.ts$/.test(path))
  for (const file of found) await importOf(file)
}
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
  const isFirst = activeMutant === undefined
  shared.activeMutant = wanted ? undefined : activeMutant
  if (isFirst) await loadShared()
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
    if (isFirst) tests.push({ id: loadOf(file), fileName: file, timeSpentMs: 1 })
    for (const test of found.filter(({ id }) => wanted?.has(id) ?? true)) {
      tests.push(await runOne(test))
      if (bail && tests.at(-1)?.failure !== undefined) return { tests, coverage: null, hitCount: shared.hitCount ?? 0, imports: new Map() }
    }
  }
  shared.activeMutant = undefined
  return {
    tests,
    coverage: shared.mutantCoverage,
    hitCount: shared.hitCount ?? 0,
    imports: isFirst ? imports : new Map(),
    ...(broken === undefined ? {} : { broken }),
  }
}

const port = parentPort
if (port === null) throw new Error('made to be run as a thread')
const answer = async (asked: Asked): Promise<void> => port.postMessage(await run(asked))
port.on('message', (asked: Asked) => void answer(asked))
if (workerData !== null) await answer(workerData as Asked)
