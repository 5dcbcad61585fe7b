import { expect, it } from 'vitest'
import { ConfigError } from '../../api/config-error.ts'
import { readCommand } from '../../api/service/read-command.ts'

const SHAPE = { options: { locked: { type: 'boolean', default: false } }, allowPositionals: true } as const
const USAGE = 'npm run backup -- [--locked] [file]'

it.each([
  [['--locke', 'x'], "Unknown option '--locke'"],
  [['--locked=yes'], "Option '--locked' does not take an argument"],
])('answers %j with a sentence and the usage', (args, said) => {
  const read = () => readCommand({ ...SHAPE, args }, USAGE)
  expect(read).toThrow(ConfigError)
  expect(read).toThrow(`${said}. Write it as: ${USAGE}`)
})

it('reads what is right', () => {
  const { values, positionals } = readCommand({ ...SHAPE, args: ['--locked', 'a.backup'] }, USAGE)
  expect([values.locked, positionals]).toEqual([true, ['a.backup']])
})
