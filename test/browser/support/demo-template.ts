import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { TestProject } from 'vitest/node'
import { makeDemoFolder, type DemoFolder } from './demo-folder.ts'

declare module 'vitest' {
  interface ProvidedContext {
    /** The demo's data folder, which each file copies. */
    demoTemplate: DemoFolder
  }
}

/** Seeds the demo once for all files of the suite: copying its folder takes a third of a second. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const path = await mkdtemp(join(tmpdir(), 'driploop-demo-template-'))
  project.provide('demoTemplate', await makeDemoFolder(path))
  return () => rm(path, { recursive: true, force: true })
}
