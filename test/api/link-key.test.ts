import { mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { findLinkKey, getLinkKey, readLinkKey } from '../../api/service/link-key.ts'

let dataDir: string
beforeEach(async () => {
  dataDir = await mkdtemp(join(tmpdir(), 'driploop-key-'))
})
afterEach(() => rm(dataDir, { recursive: true, force: true }))

const read = async (): Promise<string> => new TextDecoder().decode(await readLinkKey({ linkKey: null, dataDir }))

describe('the key of links', () => {
  it('is made once, for its owner alone, with nothing left beside it', async () => {
    const key = await read()
    // 32 bytes in base64url.
    expect(key).toMatch(/^[\w-]{43}$/)
    expect(await read()).toBe(key)
    expect(await readdir(dataDir)).toEqual(['link-key'])
    expect((await stat(join(dataDir, 'link-key'))).mode & 0o777).toBe(0o600)
  })

  it('is made where a start was killed before it had written one', async () => {
    await writeFile(join(dataDir, 'link-key'), '')
    const key = await read()
    expect(key).toMatch(/^[\w-]{43}$/)
    expect(await readFile(join(dataDir, 'link-key'), 'utf8')).toBe(key)
  })

  it('is the same for starts at the same moment', async () => {
    expect(new Set(await Promise.all([read(), read(), read(), read()])).size).toBe(1)
  })

  it('is never made anew where one was damaged: printed links hang on it', async () => {
    await writeFile(join(dataDir, 'link-key'), 'half of it')
    await expect(read()).rejects.toThrow('damaged')
    expect(await readFile(join(dataDir, 'link-key'), 'utf8')).toBe('half of it')
  })

  it('is only looked for where a backup is made from the console: there is no other to be made up', async () => {
    const elsewhere = { linkKey: null, dataDir: join(dataDir, 'not-the-one') }
    expect(await findLinkKey(elsewhere)).toBeUndefined()
    await expect(getLinkKey(elsewhere)).rejects.toThrow("Set LINK_KEY or the service's DATA_DIR")
    expect(await readdir(dataDir)).toEqual([])
    const key = await read()
    expect(new TextDecoder().decode(await getLinkKey({ linkKey: null, dataDir }))).toBe(key)
    expect(new TextDecoder().decode(await getLinkKey({ ...elsewhere, linkKey: key }))).toBe(key)
  })
})
