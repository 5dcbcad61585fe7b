import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { SumpSpec } from '../../../core/catalog/appliance-spec.ts'
import type { Conditions } from '../../../core/sizing/conditions.ts'
import type { Gear } from '../../../core/sizing/gear.ts'
import { openInputs } from '../../../core/sizing/open-inputs.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { isNear } from './reference-tanks.ts'
import { conditions, findingOf, gear, one, reportOf } from './sample-build.ts'

/** 48 × 18 × 21 in of 10 mm glass: 1199.2 × 437.2 mm inside, so that 30 mm of water are 15.73 L. */
const stated: Partial<Conditions> = { siphonBelowMm: 30, pipeVolumeL: 1 }
const sump = (spec: SumpSpec): Partial<Gear> => ({ sump: one('Osmere Sump', spec) })
const found = (spec: SumpSpec, room: Partial<Conditions> = stated) => findingOf('drain_down', sump(spec), room)

describe('what runs back when the return pump stops', () => {
  /** By hand: 0.524 29 m² × 0.03 m + 1 L = 16.73 L. Area × depth is geometry; that a fifth of the room stays free is common practice. */
  it.each([
    [38, 28, 'fits'],
    [45, 21, 'fits'],
    [46, 20, 'marginal'],
    [49, 17, 'marginal'],
    [50, 16, 'does_not_fit'],
  ])('fills the room above the running water of a sump of 66 L that runs with %s L', (operatingVolumeL, room, verdict) => {
    const { value, limit, margin, ...rest } = found({ totalVolumeL: 66, operatingVolumeL })
    expect(value).toEqual({ value: 16.7, unit: 'L', digits: 1 })
    expect(limit).toEqual({ kind: 'at_most', high: { value: room, unit: 'L', digits: 1 } })
    isNear(margin?.value ?? NaN, room - 16.7, 1e-9)
    expect(rest).toMatchObject({ verdict, assumed: [], missing: [] })
  })

  /** By hand: 10 to 75 mm over the same area and 0.3 to 3 L of pipes, common practice, are 5.5 to 42.3 L. */
  it('is told over what is usual where nobody measured how deep the siphon reaches', () => {
    const open = found({ totalVolumeL: 66, operatingVolumeL: 38 }, {})
    expect(sayPhrase(open.reason, METRIC)).toContain('5.5 L to 42 L run down')
    expect(open).toMatchObject({ verdict: 'not_known', missing: ['siphon level', 'water in the pipes'] })
    expect(found({ totalVolumeL: 120, operatingVolumeL: 38 }, {})).toMatchObject({
      verdict: 'fits',
      assumed: ['siphon level', 'water in the pipes'],
    })
  })

  it('hangs on the bottom pane only where all of the water may run out', () => {
    const { bottomMm: _, ...open } = gear().tank!.spec
    const missingWith = (siphonBelowMm: number) => {
      const built = { ...sump({ totalVolumeL: 66, operatingVolumeL: 40 }), tank: one('Wendlemere 75', open) }
      return findingOf('drain_down', built, { siphonBelowMm }).assumed.concat(findingOf('drain_down', built, { siphonBelowMm }).missing)
    }
    expect(missingWith(30)).toEqual(['water in the pipes'])
    expect(missingWith(1000)).toContain('bottom thickness')
  })

  it('never takes more than the tank holds', () => {
    const all = found({ totalVolumeL: 900, operatingVolumeL: 100 }, { siphonBelowMm: 1000, pipeVolumeL: 0 })
    // By hand: 0.524 29 m² × (483.4 mm of water − 0.6 × 50 mm of grains) = 237.71 L, what stands in it, and that hangs on how it is filled.
    expect(
      found({ totalVolumeL: 900, operatingVolumeL: 100 }, { siphonBelowMm: 1000, pipeVolumeL: 0, assumed: ['substrateDepthMm'] }).assumed,
    ).toHaveLength(1)
    isNear(all.value?.value ?? NaN, 237.7, 1e-4)
  })

  // 237.7 L over 0.524 29 m² would stand 453.4 mm high: 140 mm less, as other fills and beds may come to, are 313.4 mm.
  it.each([
    [313, []],
    [314, ['substrate depth']],
  ])('hangs on how the tank is filled where it reaches down to its last water: a siphon at %s mm', (siphonBelowMm, assumed) =>
    expect(
      found({ totalVolumeL: 900, operatingVolumeL: 100 }, { siphonBelowMm, pipeVolumeL: 0, assumed: ['substrateDepthMm'] }).assumed,
    ).toEqual(assumed),
  )

  it('is told as one figure where it is one', () =>
    expect(sayPhrase(found({ totalVolumeL: 66, operatingVolumeL: 38 }).reason, METRIC)).toBe(
      'When the return pump stops, 17 L run down out of tank and pipes. The sump has room for 28 L.',
    ))

  it('is asked of a return pump or a skimmer that wants a sump where none is chosen, and of nothing else', () => {
    const bare = findingOf('drain_down', { filters: [one('Pellick Return', { type: 'return_pump', ratedFlowLph: 3000 })] }, stated)
    expect(bare).toMatchObject({ verdict: 'not_known', missing: ['volume of the sump'] })
    // 16.73 L are four fifths of 21 L, and a sump that runs with two fifths of what it holds has them in 35 L.
    expect(bare.action?.want).toEqual({ slot: 'sump', quantity: 1, minimum: { totalVolumeL: 35 } })
    expect(bare.limit).toBeUndefined()
    expect(reportOf().findings.some(({ check }) => check === 'drain_down')).toBe(false)
  })

  it('says what cures it, with the caution that neither hole nor valve is to be trusted alone', () => {
    const tight = found({ totalVolumeL: 66, operatingVolumeL: 50 })
    expect(tight.action && sayPhrase(tight.action.text, METRIC)).toMatch(/^Keep 21 L of room in the sump, or raise the return's outlet/)
    expect(tight.caution).toMatch(/an air hole clogs, a check valve sticks/)
    expect(found({ totalVolumeL: 66, operatingVolumeL: 38 }).action).toBeNull()
  })

  it('never gets better with a deeper siphon, fuller pipes or more water in the sump', () => {
    const rank = { fits: 0, marginal: 1, does_not_fit: 2, not_known: 3 }
    fc.assert(
      fc.property(
        fc.record({
          siphon: fc.integer({ min: 0, max: 200 }),
          pipes: fc.integer({ min: 0, max: 10 }),
          running: fc.integer({ min: 1, max: 60 }),
        }),
        fc.constantFrom('siphon', 'pipes', 'running'),
        ({ siphon, pipes, running }, what) => {
          const at = (more: number) =>
            found(
              { totalVolumeL: 80, operatingVolumeL: running + (what === 'running' ? more : 0) },
              { siphonBelowMm: siphon + (what === 'siphon' ? more : 0), pipeVolumeL: pipes + (what === 'pipes' ? more : 0) },
            )
          expect(rank[at(5).verdict]).toBeGreaterThanOrEqual(rank[at(0).verdict])
        },
      ),
      { numRuns: 40 },
    )
  })

  it('has a question for each of its open inputs, and each changes what it says', () => {
    const subject = { gear: gear(sump({ lengthMm: 600, widthMm: 380, heightMm: 400 })), conditions: conditions() }
    const inputs = openInputs(subject).filter(({ name }) => /sump|siphon|pipes/.test(name))
    expect(inputs.map(({ name }) => name)).toEqual(['siphon level', 'water in the pipes', 'volume of the sump', 'water in the sump'])
    const open = findingOf('drain_down', subject.gear, {})
    expect(open.missing).toEqual(['siphon level', 'water in the pipes', 'volume of the sump', 'water in the sump'])
    for (const { name, ends } of inputs)
      for (const { state } of ends) {
        const now = state(subject)
        const { missing, assumed } = findingOf('drain_down', now.gear, now.conditions)
        expect([...missing, ...assumed]).not.toContain(name)
        expect([...missing, ...assumed]).toHaveLength(3)
      }
  })
})
