import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { dirname, join, relative, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'

/** Which folder may import which; the compiler's project references say the same, this says it in words when it breaks. */
const root = resolve(import.meta.dirname, '../..')
const ROOMS = ['core', 'db', 'api', 'web/app', 'web/pages', 'web/plots', 'test'] as const
type Room = (typeof ROOMS)[number]
const MAY: Record<Room, readonly Room[]> = {
  core: [],
  db: ['core'],
  api: ['core', 'db', 'web/pages', 'web/plots'],
  'web/app': ['core', 'web/plots'],
  'web/pages': ['core', 'web/plots'],
  'web/plots': ['core'],
  test: ROOMS,
}
const CORE_PACKAGES = ['zod']

const filesUnder = (folder: string): string[] =>
  readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name)
    if (entry.isDirectory()) return entry.name === 'dist' ? [] : filesUnder(path)
    return /\.(ts|tsx)$/.test(entry.name) ? [path] : []
  })

const roomOf = (path: string): Room | undefined => ROOMS.find((room) => relative(root, path).startsWith(`${room}/`))

interface Import {
  from: string
  target: string
  typeOnly: boolean
}
function importsOf(file: string): Import[] {
  const text = readFileSync(file, 'utf8')
  const found = [...text.matchAll(/^(?:import|export)\s+(type\s+)?[^'"]*?from\s+'([^']+)'|^import\s+'([^']+)'|import\('([^']+)'\)/gm)]
  return found.map((match) => ({
    from: relative(root, file),
    target: match[2] ?? match[3] ?? match[4] ?? '',
    typeOnly: match[1] !== undefined,
  }))
}

const files = ROOMS.flatMap((room) => filesUnder(join(root, room)))

describe('the arrows of the house', () => {
  it('has files in every room', () => {
    for (const room of ROOMS)
      expect(
        files.some((file) => roomOf(file) === room),
        room,
      ).toBe(true)
  })

  it('lets each room import only what it may', () => {
    const wrong = files.flatMap((file) => {
      const room = roomOf(file)!
      return importsOf(file).flatMap((one) => {
        if (!one.target.startsWith('.')) return []
        const target = roomOf(resolve(dirname(file), one.target))
        if (target === undefined || target === room || MAY[room].includes(target)) return []
        const typesOfTheServer = room === 'web/app' && target === 'api' && one.typeOnly
        return typesOfTheServer ? [] : [`${one.from} imports ${one.target}`]
      })
    })
    expect(wrong).toEqual([])
  })

  it('keeps packages out of the core, but for validators in schema.ts', () => {
    const wrong = files
      .filter((file) => roomOf(file) === 'core')
      .flatMap(importsOf)
      .filter((one) => !one.target.startsWith('.'))
      .filter((one) => !(CORE_PACKAGES.includes(one.target) && one.from.endsWith('/schema.ts')))
    expect(wrong).toEqual([])
  })

  it('keeps the clock, chance and the network out of the core', () => {
    const wrong = files
      .filter((file) => roomOf(file) === 'core')
      .filter((file) => /\bDate\.now\(|new Date\(\)|Math\.random\(|\bfetch\(|\bprocess\./.test(readFileSync(file, 'utf8')))
    expect(wrong.map((file) => relative(root, file))).toEqual([])
  })

  it('keeps SQL inside db', () => {
    const wrong = files
      .filter((file) => ['api', 'web/app', 'web/pages'].includes(roomOf(file) ?? ''))
      .filter((file) => /\b(selectFrom|insertInto|updateTable|deleteFrom)\(|\bsql`/.test(readFileSync(file, 'utf8')))
    expect(wrong.map((file) => relative(root, file))).toEqual([])
  })

  it('imports only files that exist, with their extension', () => {
    const wrong = files.flatMap((file) =>
      importsOf(file)
        .filter((one) => one.target.startsWith('.') && !one.target.includes('?'))
        .filter((one) => !existsSync(resolve(dirname(file), one.target)))
        .map((one) => `${one.from}: ${one.target}`),
    )
    expect(wrong).toEqual([])
  })
})
