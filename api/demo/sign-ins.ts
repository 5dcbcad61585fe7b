import { randomInt } from 'node:crypto'
import { chmod, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Role } from '../../core/people/roles.ts'
import { ROLES } from '../../core/people/roles.ts'

/** Without signs that look alike in print. Twenty of them carry 98 bits. */
const LETTERS = 'abcdefghjkmnpqrstuvwxyz23456789'
const GROUPS = 4
const GROUP_SIZE = 5

const group = (): string => Array.from({ length: GROUP_SIZE }, () => LETTERS[randomInt(LETTERS.length)]).join('')

/** @example demoPassword() // 'k7qpm-xw3sd-94hbt-vnrfa' */
export const demoPassword = (): string => Array.from({ length: GROUPS }, group).join('-')

export const demoPasswords = (): Record<Role, string> =>
  Object.fromEntries(ROLES.map((role) => [role, demoPassword()])) as Record<Role, string>

const fileIn = (folder: string): string => join(folder, 'sign-ins.txt')

/** Keeps the demo's passwords where its owner alone can read them; the database holds their hashes only. */
export async function writeSignIns(folder: string, text: string): Promise<void> {
  await writeFile(fileIn(folder), text, { mode: 0o600 })
  await chmod(fileIn(folder), 0o600)
}

/** What the first run wrote; undefined where someone deleted it. */
export const readSignIns = (folder: string): Promise<string | undefined> => readFile(fileIn(folder), 'utf8').catch(() => undefined)
