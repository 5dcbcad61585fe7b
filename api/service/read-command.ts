import { parseArgs, type ParseArgsConfig } from 'node:util'
import { ConfigError } from '../config-error.ts'

/**
 * What was written behind a command. Errors: ConfigError with the usage for an option that the command does not have.
 *
 * @example readCommand({ allowPositionals: true, args: ['--locke'] }, 'npm run restore <file>') // ConfigError: '--locke' is not known. …
 */
export function readCommand<const Shape extends ParseArgsConfig>(shape: Shape, usage: string) {
  try {
    return parseArgs(shape)
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : ''
    if (!(error instanceof Error) || !code.startsWith('ERR_PARSE_ARGS')) throw error
    const [said = ''] = error.message.split('. ')
    throw new ConfigError(`${said}. Write it as: ${usage}`, { cause: error })
  }
}
