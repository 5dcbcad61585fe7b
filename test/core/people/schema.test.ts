import { describe, expect, it } from 'vitest'
import { foldSignInName } from '../../../core/people/sign-in-name.ts'
import { NewPassword, NewPerson, PersonChange, SignIn } from '../../../core/people/schema.ts'

describe('a new password (NIST SP 800-63B-4)', () => {
  it.each([
    ['fourteen chars', false],
    ['fifteen charact', true],
    ['               ', true],
    ['🐟'.repeat(14), false],
    ['🐟'.repeat(15), true],
    ['a'.repeat(256), true],
    ['a'.repeat(257), false],
    ['half of a pair \ud83d', false],
  ])('%j: taken is %s', (password, taken) => {
    expect(NewPassword.safeParse(password).success).toBe(taken)
  })

  it('asks for length alone: no digit, no capital, no sign', () => {
    expect(NewPassword.safeParse('all small letters here').success).toBe(true)
  })

  it('is kept as typed, blanks at its ends included', () => {
    expect(NewPassword.parse('  fifteen charact  ')).toBe('  fifteen charact  ')
  })
})

describe('a person', () => {
  const person = { name: 'Noor Fenwick', signInName: 'Noor.Fenwick', password: 'a long enough sentence' }

  it('signs in without regard to case', () => {
    expect(NewPerson.parse(person).signInName).toBe('noor.fenwick')
    expect(SignIn.parse({ signInName: ' NOOR.Fenwick ', password: 'x' }).signInName).toBe('noor.fenwick')
  })

  // Unicode Standard Annex 15, figures 5 and 6 (compatibility forms); CaseFolding.txt of the Unicode Character Database for ß and ς.
  it.each([
    ['ＩＮＥＳ', 'ines'],
    ['ﬁnn', 'finn'],
    ['Straße', 'strasse'],
    ['ΣΟΦΟΣ', 'σοφοσ'],
    ['σοφος', 'σοφοσ'],
    ['Zoe\u0308', 'zoë'],
    ['иван', 'иван'],
  ])('who chooses "%s" is kept as "%s"', (signInName, kept) => {
    expect(NewPerson.parse({ ...person, signInName }).signInName).toBe(kept)
    expect(foldSignInName(kept)).toBe(kept)
  })

  it('has a name without the signs that turn a sentence around, and keeps the letters of its own script', () => {
    const nameOf = (name: string) => NewPerson.parse({ ...person, name }).name
    expect(nameOf('\u202dNoor \u202eFenwick\u202c')).toBe('Noor Fenwick')
    expect(nameOf('\u2068נועה\u2069 \u200eB.')).toBe('נועה \u200eB.')
    expect(NewPerson.safeParse({ ...person, name: '\u202e\u2066' }).error?.issues[0]?.message).toBe('Name is empty. Fill it in.')
  })

  it.each(['n', 'two words', '@noor', 'a/b', ''])('is refused with the sign-in name "%s"', (signInName) => {
    expect(NewPerson.safeParse({ ...person, signInName }).success).toBe(false)
  })

  it.each(['no\u0000body', 'half \ud83d'])('cannot sign in as %j, which no database can look up', (signInName) => {
    expect(SignIn.safeParse({ signInName, password: 'x' }).error?.issues[0]?.path).toEqual(['signInName'])
  })

  it('cannot give itself a role', () => {
    expect(NewPerson.safeParse({ ...person, role: 'manager' }).success).toBe(false)
  })

  it('is changed by naming what changes', () => {
    expect(PersonChange.safeParse({}).success).toBe(false)
    expect(PersonChange.safeParse({ disabled: true }).success).toBe(true)
  })
})
