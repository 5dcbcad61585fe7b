import { describe, expect, it } from 'vitest'
import { forgetDraft, keepDraft, keptDraft, type Keep } from '../../../../web/app/quotes/kept-draft.ts'
import { sampleDraft } from './sample-draft.ts'

const memory = (): Keep & { all: Map<string, string> } => {
  const all = new Map<string, string>()
  return {
    all,
    getItem: (key) => all.get(key) ?? null,
    setItem: (key, value) => void all.set(key, value),
    removeItem: (key) => void all.delete(key),
  }
}
const full: Keep = {
  getItem: () => { throw new Error('off') },
  setItem: () => { throw new Error('full') },
  removeItem: () => { throw new Error('off') },
} // prettier-ignore
const kept = { baseVersion: 3, base: sampleDraft, draft: { ...sampleDraft, title: 'Kept' } }

describe('an unsaved draft', () => {
  it('comes back as it was kept, for its own quote only', () => {
    const storage = memory()
    expect(keepDraft(storage, 'q1', kept)).toBe(true)
    expect(keptDraft(storage, 'q1')).toEqual(kept)
    expect(keptDraft(storage, 'q2')).toBeNull()
  })
  it('is gone once the server has it', () => {
    const storage = memory()
    keepDraft(storage, 'q1', kept)
    forgetDraft(storage, 'q1')
    expect(storage.all.size).toBe(0)
  })
  it('does not stop the editing when storage is full or off', () => {
    expect(keepDraft(full, 'q1', kept)).toBe(false)
    expect(keptDraft(full, 'q1')).toBeNull()
    expect(() => forgetDraft(full, 'q1')).not.toThrow()
  })
  it.each(['{', 'null', '{"baseVersion":"x"}', '{"baseVersion":1,"base":{},"draft":{}}'])(
    'is ignored where it cannot be read: %s',
    (text) => {
      const storage = memory()
      keepDraft(storage, 'q1', kept)
      for (const key of storage.all.keys()) storage.all.set(key, text)
      expect(keptDraft(storage, 'q1')).toBeNull()
    },
  )
})
