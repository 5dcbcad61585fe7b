import { describe, expect, it } from 'vitest'
import { namesApart } from '../../../core/people/names-apart.ts'

describe('names of people', () => {
  it('are followed by the sign-in name where another has the same, whatever its capitals, and only there', () => {
    const people = [
      { name: 'Ines Halberg', signInName: 'ines' },
      { name: 'Odo Fennick', signInName: 'odo' },
      { name: 'ines halberg', signInName: 'ih' },
      { name: 'Ines', signInName: 'ines.b' },
    ]
    expect(namesApart(people)).toEqual(['Ines Halberg (ines)', 'Odo Fennick', 'ines halberg (ih)', 'Ines'])
    expect(namesApart([])).toEqual([])
  })
})
