import { globSync, realpathSync } from 'node:fs'
import { pathToFileURL } from 'node:url'
import { Worker } from 'node:worker_threads'
import { nearestFirst } from './nearness.ts'
import { loadOf, type Answered, type Asked } from './asked.ts'

/**
 * Runs the tests of the physics for the tool that changes it. The tests are loaded once and run again for each mutant, which takes milliseconds; what is at
 * work while a file loads meets a thread of its own, where that file is loaded anew: a constant of a rule every file that imports it, what a `describe` reckons for itself
 * its own. Mutants of each kind meet all tests that reach them, nearest first.
 */
interface MutantRun {
  activeMutant: { id: string }
  /** Where the changed file lies. */
  sandboxFileName: string
  testFilter?: string[]
  hitLimit?: number
  mutantActivation: 'runtime' | 'static'
}

const start = (workerData: Asked | null): Worker => new Worker(new URL('test-worker.ts', import.meta.url), { workerData })

/** What a worker answers, or what broke it. */
const answerOf = (worker: Worker): Promise<Answered> =>
  new Promise((resolve, reject) => {
    worker.once('message', (answered: Answered) => {
      worker.removeListener('error', reject)
      resolve(answered)
    })
    worker.once('error', reject)
  })

/** In the tool's terms. */
function toldOf({ tests, hitCount, broken }: Answered, hitLimit: number | undefined): object {
  if (hitLimit !== undefined && hitCount > hitLimit) return { status: 'timeout', reason: 'ran without an end' }
  const failed = tests.find(({ failure }) => failure !== undefined)
  if (failed) return { status: 'killed', killedBy: [failed.id], failureMessage: failed.failure, nrOfTests: tests.length }
  return broken === undefined ? { status: 'survived', nrOfTests: tests.length } : { status: 'error', errorMessage: broken }
}

/** The tool bears a hundred times what the tests do without a mutant; twenty are more than any search takes that ends. */
const OF_LIMIT = 5

class TestRunner {
  #files: string[] = []
  #kept: Worker | undefined
  #imports: Answered['imports'] = new Map()

  capabilities(): { reloadEnvironment: boolean } {
    return { reloadEnvironment: true }
  }

  init(): void {
    this.#files = nearestFirst(
      globSync('test/{core/sizing,core/water,reference}/**/*.test.ts').filter((path) => !path.endsWith('.properties.test.ts')),
    )
  }

  async #ask(asked: Asked): Promise<Answered> {
    this.#kept ??= start(null)
    const answered = answerOf(this.#kept)
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a thread of this process has no origin
    this.#kept.postMessage(asked)
    return answered
  }

  async #askOnce(asked: Asked): Promise<Answered> {
    const worker = start(asked)
    const answered = await answerOf(worker)
    await worker.terminate()
    return answered
  }

  /** The tests that import a file, straight or by way of others; all where nobody looked. */
  #reaching(path: string): string[] {
    const addressOf = (file: string): string => pathToFileURL(realpathSync(file)).href
    const reachedFrom = (file: string): Set<string> => {
      const found = new Set([addressOf(file)])
      for (const address of found) for (const imported of this.#imports.get(address) ?? []) found.add(imported)
      return found
    }
    return this.#imports.size === 0 ? this.#files : this.#files.filter((file) => reachedFrom(file).has(addressOf(path)))
  }

  async dryRun(): Promise<object> {
    const { tests, coverage, broken, imports } = await this.#ask({ files: this.#files, bail: false })
    this.#imports = imports
    if (broken !== undefined) return { status: 'error', errorMessage: broken }
    const told = tests.map(({ id, fileName, timeSpentMs, failure }) => ({
      id,
      name: id,
      fileName,
      timeSpentMs,
      ...(failure === undefined ? { status: 0 } : { status: 1, failureMessage: failure }),
    }))
    return { status: 'complete', tests: told, mutantCoverage: coverage }
  }

  async mutantRun({ activeMutant, sandboxFileName, testFilter, hitLimit: wide, mutantActivation }: MutantRun): Promise<object> {
    const hitLimit = wide === undefined ? undefined : wide / OF_LIMIT
    const asked = { activeMutant: activeMutant.id, ...(hitLimit === undefined ? {} : { hitLimit }), bail: true }
    if (mutantActivation === 'static' || testFilter === undefined)
      return toldOf(await this.#askOnce({ ...asked, files: this.#reaching(sandboxFileName) }), hitLimit)
    const anew = this.#files.filter((file) => testFilter.includes(loadOf(file)))
    const filter = testFilter.filter((id) => !anew.some((file) => id.startsWith(`${file}#`)))
    const kept = await this.#ask({ ...asked, files: this.#files, filter })
    if (anew.length === 0 || kept.tests.some(({ failure }) => failure !== undefined)) return toldOf(kept, hitLimit)
    return toldOf(await this.#askOnce({ ...asked, files: anew }), hitLimit)
  }

  async dispose(): Promise<void> {
    await this.#kept?.terminate()
  }
}

/** The tool asks for it under this name. */
export const strykerPlugins = [{ kind: 'TestRunner', name: 'own', injectableClass: TestRunner }]
