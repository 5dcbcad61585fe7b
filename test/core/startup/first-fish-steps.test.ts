import { describe, expect, it } from 'vitest'
import { LIVESTOCK_GROUPS, livestockGroup } from '../../../core/catalog/livestock.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { amountIn, stepFor } from './said.ts'
import { sampleSubject, sizedSubject } from './sample-subject.ts'

const EMERGENCY = 'a fish gasps at the surface or lies on its side: test at once, change half the water, ask.'
const base = sampleSubject().conditions.livestock
const sizedFor = (smallestVolumeL: number) => sizedSubject({ conditions: { livestock: { ...base, smallestVolumeL } } })
const stop = (subject: ReturnType<typeof sizedSubject>) => sayPhrase(stepFor(subject, 'first-fish').stopAndAsk, METRIC)

describe('the size of the tank', () => {
  // Own: the outside of 1219.2 × 457.2 × 533.4 mm is 297.3 L; about 238 L of it is water.
  it('is judged by the outside, as the report does: 250 L is not too much for it', () => {
    expect(stop(sizedFor(250))).toBe(EMERGENCY)
  })

  it.each([320, 400])('is said beside the emergency, never in its place, where %d L are asked', (litres) => {
    expect(stop(sizedFor(litres))).toMatch(
      new RegExp(`^${EMERGENCY.replace(/\./g, '\\.')} Before you buy any fish, talk the size over: .*297 L`),
    )
    expect(stop(sizedFor(litres))).toContain(`${litres} L`)
  })
})

describe('feed', () => {
  const feedOf = (id: string) => {
    const livestock = livestockGroup(id)
    if (!livestock) throw new Error(`no group ${id}`)
    return amountIn(stepFor(sampleSubject({ conditions: { livestock } }), 'first-fish'), 'Feed')
  }

  it('of dwarf shrimp is 0.012 g, a quarter of 0.05 rounded down, and some grains to the eye', () =>
    expect(feedOf('dwarf-shrimp')).toBe('at most 0.012 g a day: some grains, less than a pinch'))
  it('of labyrinth fish is 0.05 g, not twice that', () => expect(feedOf('labyrinth')).toMatch(/^at most 0\.050 g a day/))
  it('of larger fish is rounded down too', () => expect(feedOf('warm-cichlids')).toBe('at most 1.2 g a day'))

  it.each(LIVESTOCK_GROUPS.map(({ id, feedGramsPerDay }) => [id, feedGramsPerDay] as const))(
    'of %s is above nothing and at most a quarter of its ration',
    (id, grams) => {
      const told = Number(/[\d.]+/.exec(feedOf(id))?.[0])
      expect(told).toBeGreaterThan(grams * 0.22)
      expect(told).toBeLessThanOrEqual(grams * 0.25)
    },
  )
})

it('names no light in a build without one', () => {
  const actions = (subject: ReturnType<typeof sampleSubject>) =>
    stepFor(subject, 'first-fish').actions.map((each) => sayPhrase(each, METRIC))
  expect(actions(sampleSubject())[0]).toMatch(/^Light off\. Float the closed bag/)
  expect(actions(sampleSubject({ gear: { lights: [] } }))[0]).toMatch(/^Float the closed bag/)
})

describe('the weekly change', () => {
  const weekly = (feedGramsPerDay: number) => {
    const subject = sizedSubject({ conditions: { livestock: { ...base, feedGramsPerDay } } })
    const percent = subject.report.findings.find(({ check }) => check === 'weekly_change')?.value?.value ?? NaN
    return { percent, told: amountIn(stepFor(subject, 'first-month'), 'Each week'), litres: subject.report.figures.waterVolumeL ?? NaN }
  }

  it('is a quarter where the report asks for less', () => {
    const { percent, told, litres } = weekly(1)
    expect(percent).toBeLessThan(25)
    expect(told).toMatch(new RegExp(`^change ${Math.round(litres / 4)} L`))
  })

  it('is two halves of what the report asks for where that is more than half of the water', () => {
    const { percent, told, litres } = weekly(5)
    expect(percent).toBeGreaterThan(50)
    expect(told).toMatch(new RegExp(`^twice, change ${Math.round((litres * percent) / 200)} L with .* each time$`))
  })

  it('says with the report that no two changes are enough, and asks for no more than four fifths', () => {
    const { percent, told, litres } = weekly(25)
    expect(percent).toBeGreaterThan(160)
    expect(told).toMatch(new RegExp(`^twice, change ${Math.round(litres * 0.8)} L with .* each time\\. Not even that keeps up`))
    const subject = sizedSubject({ conditions: { livestock: { ...base, feedGramsPerDay: 25 } } })
    const finding = subject.report.findings.find(({ check }) => check === 'weekly_change')!
    expect(sayPhrase(finding.reason, METRIC)).toContain('nor do two.')
    expect(told).toMatch(/feed less, keep fewer animals$/)
    expect(sayPhrase(finding.action!.text, METRIC)).toMatch(/^Feed less, keep fewer animals/)
  })
})
