import { spawnSync } from 'node:child_process'

/** Everything that is written from something else; with --check nothing is written, and it fails where one would differ. */
const SCRIPTS = ['db/generate-types.ts', 'test/documents/write.ts']

const codes = SCRIPTS.map((script) => spawnSync(process.execPath, [script, ...process.argv.slice(2)], { stdio: 'inherit' }).status)
process.exitCode = codes.every((code) => code === 0) ? 0 : 1
