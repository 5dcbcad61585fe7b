import { describe, expect, it } from 'vitest'
import { changeOf, touches, watched } from '../../../core/sizing/reads.ts'
import type { SizingSubject } from '../../../core/sizing/report.ts'
import { assumedOf } from '../../../core/sizing/words.ts'
import { conditions, gear } from './sample-build.ts'

const subject: SizingSubject = { gear: gear(), conditions: conditions({ assumed: ['floor', 'plants'] }) }
const colder: SizingSubject = { ...subject, conditions: { ...subject.conditions, coldestRoomC: 5 } }
const answered: SizingSubject = { ...subject, conditions: { ...subject.conditions, assumed: ['plants'] } }
const sumped: SizingSubject = { ...subject, gear: { ...subject.gear, sump: { name: 'Hollowell', quantity: 1, spec: {} } } }

/** Whether what a piece of work looks at of the subject changed. */
const isTouched = (work: (at: SizingSubject) => unknown, to: SizingSubject): boolean => {
  const watch = watched(subject)
  return touches(watch.during(() => work(watch.subject)).keys, changeOf(subject, to))
}

describe('what a rule looks at', () => {
  it('is the fields that it reads, and no others', () => {
    expect(isTouched(({ conditions: { coldestRoomC } }) => coldestRoomC, colder)).toBe(true)
    expect(isTouched(({ conditions: { warmestRoomC } }) => warmestRoomC, colder)).toBe(false)
    expect(isTouched(({ gear: { tank } }) => tank, colder)).toBe(false)
  })

  it('includes what it found missing', () => {
    expect(isTouched(({ gear: { sump } }) => sump === undefined, sumped)).toBe(true)
    expect(isTouched((at) => 'sump' in at.gear, sumped)).toBe(true)
    expect(isTouched(({ gear: { stand } }) => stand, sumped)).toBe(false)
  })

  it('is everything once it takes a copy, what is not there yet included', () => {
    expect(isTouched((at) => ({ ...at.gear }), sumped)).toBe(true)
    expect(isTouched((at) => Object.keys(at.conditions), colder)).toBe(true)
    expect(isTouched((at) => ({ ...at.gear }), colder)).toBe(false)
  })

  it('tells of the defaults only those that it asks for', () => {
    expect(isTouched((at) => assumedOf(at.conditions, ['floor']), answered)).toBe(true)
    expect(isTouched((at) => assumedOf(at.conditions, ['plants', 'coldestRoomC']), answered)).toBe(false)
    expect(isTouched((at) => at.conditions.assumed.length, answered)).toBe(true)
  })

  it('is of one piece of work alone', () => {
    const watch = watched(subject)
    const first = watch.during(() => watch.subject.conditions.coldestRoomC)
    const second = watch.during(() => watch.subject.conditions.warmestRoomC)
    const change = changeOf(subject, colder)
    expect([first.made, second.made]).toEqual([subject.conditions.coldestRoomC, subject.conditions.warmestRoomC])
    expect([touches(first.keys, change), touches(second.keys, change)]).toEqual([true, false])
  })
})

describe('what changed between two subjects', () => {
  it('is nothing where a field says the same', () => {
    const same = changeOf(subject, { gear: { ...subject.gear }, conditions: { ...subject.conditions } })
    expect([same.gear.size, same.conditions.size, same.assumed.size]).toEqual([0, 0, 0])
  })

  it('names fields, those that were not there too, and the defaults that stand for none any more', () => {
    expect([...changeOf(subject, colder).conditions]).toEqual(['coldestRoomC'])
    expect([...changeOf(subject, sumped).gear]).toEqual(['sump'])
    const { assumed, conditions: others } = changeOf(subject, answered)
    expect([[...assumed], [...others]]).toEqual([['floor'], []])
  })
})
