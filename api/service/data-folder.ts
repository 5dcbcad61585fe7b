import { access, constants, mkdir } from 'node:fs/promises'
import { ConfigError } from '../config.ts'

const REASONS: Record<string, string> = {
  EACCES: 'this account may not write there',
  EPERM: 'this account may not write there',
  EROFS: 'nothing can be written there',
  ENOTDIR: 'a part of it is a file and no folder',
  EEXIST: 'it is a file and no folder',
  ENAMETOOLONG: 'the name is too long',
}

/** Makes the data folder where there is none. Errors: ConfigError where it cannot be made or written to. */
export async function demandDataFolder(dataDir: string): Promise<void> {
  try {
    await mkdir(dataDir, { recursive: true, mode: 0o700 })
    await access(dataDir, constants.W_OK | constants.X_OK)
  } catch (error) {
    const reason = REASONS[(error as NodeJS.ErrnoException).code ?? '']
    if (reason === undefined) throw error
    throw new ConfigError(`DATA_DIR is "${dataDir}": ${reason}. Choose a folder that this account owns.`)
  }
}
