import { describe, expect, it } from 'vitest'
import { keepSingleKeys, readSingleKeys, shortcutOf, SHORTCUTS } from '../../../../web/app/quotes/shortcuts.ts'

const plain = { ctrlKey: false, metaKey: false, altKey: false, isComposing: false }

describe('the single keys of the desk', () => {
  it('mean a button or a build, in either case', () => {
    expect(shortcutOf({ ...plain, key: 'n' })).toBe('N')
    expect(shortcutOf({ ...plain, key: 'B' })).toBe('B')
    expect(shortcutOf({ ...plain, key: 'q' })).toBeNull()
  })

  it.each(['ctrlKey', 'metaKey', 'altKey', 'isComposing'] as const)(
    'mean nothing with %s: that is the browser’s or the writer’s',
    (held) => {
      expect(shortcutOf({ ...plain, key: 'n', [held]: true })).toBeNull()
    },
  )

  it('are no keys with a name, and no letter means two things', () => {
    expect(shortcutOf({ ...plain, key: 'Backspace' })).toBeNull()
    const letters = [...SHORTCUTS.map((one) => one.key), 'A', 'B', 'C', 'D']
    expect(new Set(letters).size).toBe(letters.length)
  })

  it('are on until they are switched off, also where nothing can be kept', () => {
    const kept = new Map<string, string>()
    const storage = { getItem: (key: string) => kept.get(key) ?? null, setItem: (key: string, value: string) => void kept.set(key, value) }
    expect(readSingleKeys(storage)).toBe(true)
    keepSingleKeys(storage, false)
    expect(readSingleKeys(storage)).toBe(false)
    keepSingleKeys(storage, true)
    expect(readSingleKeys(storage)).toBe(true)
    const broken = (): never => {
      throw new Error('no storage')
    }
    expect(readSingleKeys({ getItem: broken })).toBe(true)
    expect(() => keepSingleKeys({ setItem: broken }, false)).not.toThrow()
  })
})
