'use strict'
/*
 * First step of every npm script, in plain JavaScript for the oldest Node a fresh machine may have (20): installs when the lock
 * file changed, builds the web application when its sources changed, then goes on with Node 24 from the installed packages.
 */
const { spawn, spawnSync } = require('node:child_process')
const { createHash } = require('node:crypto')
const { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } = require('node:fs')
const { join, relative } = require('node:path')

const root = join(__dirname, '..')
/** Argon2 came into node:crypto with 24.7. */
const OLDEST = [24, 7]

const GOALS = {
  start: { web: true, run: ['api/server.ts'] },
  'manager-link': { web: false, run: ['api/manager-link.ts'] },
  demo: { web: true, run: ['api/demo.ts'] },
  test: { web: true, run: ['test/run.ts'] },
  bench: { web: true, run: ['test/bench/run.ts'] },
  check: { web: false, run: ['test/check.ts'] },
  backup: { web: false, run: ['api/backup.ts'] },
  restore: { web: false, run: ['api/restore.ts'] },
  summaries: { web: false, run: ['api/summaries.ts'] },
  generate: { web: false, run: ['test/generate.ts'] },
  mutation: { web: false, run: ['test/mutation/run.ts'] },
  calibrate: { web: false, run: ['test/calibration/run.ts'] },
  build: { web: true, run: null },
}

function fail(sentence) {
  console.error(sentence)
  process.exit(1)
}

function hashOf(paths) {
  const hash = createHash('sha256')
  for (const path of paths) hash.update(relative(root, path)).update(readFileSync(path))
  return hash.digest('hex')
}

function filesUnder(folder) {
  if (!existsSync(folder)) return []
  return readdirSync(folder, { withFileTypes: true })
    .flatMap((entry) => {
      const path = join(folder, entry.name)
      if (entry.name === 'dist' || entry.name === 'node_modules') return []
      return entry.isDirectory() ? filesUnder(path) : [path]
    })
    .sort((a, b) => (a < b ? -1 : 1))
}

/** Runs `work` unless the stamp from an earlier run says that nothing changed since. */
function once(stampPath, hash, work) {
  if (existsSync(stampPath) && readFileSync(stampPath, 'utf8') === hash) return
  work()
  mkdirSync(join(stampPath, '..'), { recursive: true })
  writeFileSync(stampPath, hash)
}

function run(command, args, sentence) {
  const done = spawnSync(command, args, { cwd: root, stdio: ['ignore', 2, 2], shell: process.platform === 'win32' && command === 'npm' })
  if (done.error || done.status !== 0) fail(sentence)
}

function install() {
  const hash = hashOf([join(root, 'package-lock.json'), join(root, 'package.json')])
  once(join(root, 'node_modules', '.driploop-installed'), hash, () => {
    console.error('Installing what is missing (a minute or two, the first time only) …')
    run(
      'npm',
      ['ci', '--no-audit', '--no-fund', '--loglevel=error'],
      'Installing failed. Check the connection to the package registry and run the same command again.',
    )
  })
}

function newEnough(version) {
  const [major, minor] = version.replace(/^v/, '').split('.').map(Number)
  return major > OLDEST[0] || (major === OLDEST[0] && minor >= OLDEST[1])
}

/** The Node that was installed with the packages; else the machine's own if it is new enough. */
function findNode() {
  const names = [`node-${process.platform === 'win32' ? 'win' : process.platform}-${process.arch}`]
  for (const name of names) {
    const path = join(root, 'node_modules', name, 'bin', process.platform === 'win32' ? 'node.exe' : 'node')
    if (existsSync(path) && spawnSync(path, ['--version']).status === 0) return path
  }
  if (newEnough(process.version)) return process.execPath
  return fail(
    `Node ${OLDEST.join('.')} or newer is needed and none came with the packages for ${process.platform} ${process.arch}. This is ${process.version}. Install a newer Node and run the same command again.`,
  )
}

function buildWeb(node) {
  const sources = [...filesUnder(join(root, 'web')), ...filesUnder(join(root, 'core'))]
  once(join(root, 'web', 'dist', '.built'), hashOf(sources), () => {
    console.error('Building the web application …')
    run(
      node,
      ['node_modules/vite/bin/vite.js', 'build', '--config', 'web/vite.config.ts', '--logLevel', 'warn'],
      'The web application could not be built; the lines above say why.',
    )
  })
}

function main() {
  const name = process.argv[2]
  const goal = GOALS[name]
  if (!goal) fail(`Unknown goal "${name}". Known: ${Object.keys(GOALS).join(', ')}.`)
  install()
  const node = findNode()
  if (goal.web) buildWeb(node)
  if (!goal.run) return
  const child = spawn(node, [...goal.run, ...process.argv.slice(3)], {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, PATH: `${join(node, '..')}:${join(root, 'node_modules', '.bin')}:${process.env.PATH}` },
  })
  for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => child.kill(signal))
  child.on('exit', (code, signal) => process.exit(signal ? 1 : (code ?? 1)))
}

main()
