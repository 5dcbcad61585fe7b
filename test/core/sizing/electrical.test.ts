import { describe, expect, it } from 'vitest'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { continuousLimitW } from '../../../core/sizing/electrical-load.ts'
import { findingOf, one, reportOf } from './sample-build.ts'

describe('power on the circuit', () => {
  /** NEC 210.19(A)(1), 210.20(A): a continuous load is at most 80 % of the device. Exact arithmetic. */
  it.each([
    [120, 15, 1440],
    [120, 20, 1920],
  ])('lets %s V and %s A carry %s W for hours on end', (voltage, current, watts) =>
    expect(continuousLimitW(voltage, current)).toBeCloseTo(watts, 9),
  )

  it('adds up all heaters, pumps, lamps and whatever else is on the circuit', () => {
    expect(findingOf('electrical_load', {}, { otherLoadW: 300 }).value?.value).toBe(2 * 100 + 20 + 30 + 300)
  })

  it.each([
    [1440 - 250 - 144, 'fits'],
    [1440 - 250 - 143, 'marginal'],
    [1440 - 250, 'marginal'],
    [1440 - 250 + 1, 'does_not_fit'],
  ])('with %s W of other load: %s', (otherLoadW, verdict) => {
    expect(findingOf('electrical_load', {}, { otherLoadW }).verdict).toBe(verdict)
  })

  it('goes by the strip where it carries less than the circuit', () => {
    const found = findingOf('electrical_load', { power: [one('Corbelle', { outlets: 6, ratedCurrentA: 2, protective: true })] })
    expect(found.limit).toMatchObject({ high: { value: 192 } })
    expect(found.verdict).toBe('does_not_fit')
  })

  it('goes by the circuit where the strip carries more, states nothing, or is not alone', () => {
    const strip = (ratedCurrentA?: number, count = 1) => one('Corbelle', { outlets: 6, protective: true, ratedCurrentA }, count)
    for (const power of [[strip(20)], [strip(15)], [strip()], [strip(2, 2)], [strip(2), strip(15)], []])
      expect(findingOf('electrical_load', { power }).limit).toMatchObject({ high: { value: 1440 } })
    const said = (power: ReturnType<typeof strip>[]) => sayPhrase(findingOf('electrical_load', { power }).reason, METRIC)
    expect(said([strip(2)])).toContain('The strip carries')
    expect(said([strip(15)])).toContain('The circuit carries')
  })

  it('names what of the circuit is assumed, and says of what else is on it only where something is', () => {
    const assumed = ['circuitVoltageV', 'circuitCurrentA', 'otherLoadW'] as const
    expect(findingOf('electrical_load', {}, { assumed: [...assumed] }).assumed).toEqual([
      'circuit voltage',
      'circuit current',
      'other load on the circuit',
    ])
    const said = (otherLoadW: number) => sayPhrase(findingOf('electrical_load', {}, { otherLoadW }).reason, METRIC)
    expect(said(0)).not.toContain('other things')
    expect(said(1)).toContain('of other things on the circuit included')
    expect(findingOf('electrical_load').action).toBeNull()
    expect(sayPhrase(findingOf('electrical_load', {}, { otherLoadW: 1440 }).action?.text ?? [], METRIC)).toMatch(/licensed electrician/)
  })

  it('says up to where a power is unstated, and makes no check where nothing is plugged in', () => {
    const filters = [one('Pellick', { type: 'canister' as const, ratedFlowLph: 1500 })]
    expect(sayPhrase(findingOf('electrical_load', { filters }).reason, METRIC)).toContain('draws up to')
    expect(sayPhrase(findingOf('electrical_load').reason, METRIC)).not.toContain('up to')
    const bare = reportOf({ filters: [], heaters: [], lights: [], power: [] })
    expect(bare.findings.some(({ check }) => check === 'electrical_load')).toBe(false)
  })

  it('holds an unstated power where any typical one would do, and asks for it where not', () => {
    const filters = [one('Pellick', { type: 'canister' as const, ratedFlowLph: 1500 })]
    const easy = findingOf('electrical_load', { filters })
    expect(easy).toMatchObject({ verdict: 'fits', assumed: ['power of the filter'] })
    const tight = findingOf('electrical_load', { filters }, { otherLoadW: 1440 - 230 - 20 })
    expect(tight).toMatchObject({ verdict: 'not_known', missing: ['power of the filter'] })
  })
})

describe('what watts leave out', () => {
  it('is told of motors and timers, and of motors only where there are some', () => {
    const words = (changes = {}) => sayPhrase(findingOf('electrical_load', changes).reason, METRIC)
    expect(words()).toMatch(/volt-amperes.* rated for the motors or lamps that it switches\.$/)
    expect(words({ filters: [] })).not.toContain('volt-amperes')
    const skimmer = { kind: 'skimmer' as const, ...one('Corbelle foam', { powerW: 10 }) }
    expect(words({ filters: [], appliances: [skimmer] })).toContain('volt-amperes')
    expect(findingOf('electrical_load').source.tag).toBe('published')
    expect(words({ filters: [] })).toMatch(/A plug-in timer has to be rated for the motors or lamps that it switches\.$/)
  })

  it('is told of a device that trips by night', () =>
    expect(sayPhrase(findingOf('outlet_protection').reason, METRIC)).toContain('add a temperature alarm'))
})

describe('protective device', () => {
  const strip = (protective?: boolean) => ({ power: [one('Corbelle', { outlets: 6, protective })] })

  it('is the strip’s own or the circuit’s', () => {
    expect(findingOf('outlet_protection', strip(true)).verdict).toBe('fits')
    expect(findingOf('outlet_protection', strip(false), { circuitProtected: true }).verdict).toBe('fits')
    expect(findingOf('outlet_protection', strip(false)).verdict).toBe('does_not_fit')
  })

  it('is not known where nobody stated it of strip or circuit', () => {
    expect(findingOf('outlet_protection', strip())).toMatchObject({ verdict: 'not_known', missing: ['protective device of the strip'] })
    expect(findingOf('outlet_protection', { power: [] }, { assumed: ['circuitProtected'] })).toMatchObject({
      verdict: 'not_known',
      missing: ['protection of the circuit'],
    })
  })

  it('claims no code, and sends to a licensed electrician', () => {
    const found = findingOf('outlet_protection', strip(false))
    expect(found.source.tag).toBe('common_practice')
    expect(found.caution).toMatch(/local electrical code and a licensed electrician decide/)
  })
})

describe('outlets', () => {
  const strip = (outlets?: number) => ({ power: [one('Corbelle', { outlets, protective: true })] })
  it('are one an appliance', () => {
    expect(findingOf('outlets', strip(4)).verdict).toBe('fits')
    expect(findingOf('outlets', strip(3))).toMatchObject({ verdict: 'does_not_fit', action: { want: { minimum: { outlets: 4 } } } })
    expect(findingOf('outlets', strip()).verdict).toBe('not_known')
    expect(findingOf('outlets', { power: [] }).missing).toEqual(['outlets within reach'])
  })

  it('are told in the singular for one', () => {
    const alone = { filters: [], lights: [], heaters: [one('Torvane', { powerW: 50 })] }
    const said = (power: Array<ReturnType<typeof strip>['power'][number]>) => {
      const { reason, action } = findingOf('outlets', { ...alone, power })
      return [sayPhrase(reason, METRIC), action && sayPhrase(action.text, METRIC)]
    }
    expect(said([])).toEqual([
      '1 appliance needs an outlet; nobody has stated how many the wall has.',
      'Count the outlets within reach, or add a strip with at least 1 outlet.',
    ])
    expect(said(strip(1).power)).toEqual(['1 appliance needs an outlet; the strip has 1.', null])
    expect(sayPhrase(findingOf('outlets', strip(3)).reason, METRIC)).toBe('4 appliances need an outlet each; the strip has 3.')
  })

  it('are not asked of a build without appliances', () => {
    const checks = reportOf({ heaters: [], filters: [], lights: [] }).findings.map(({ check }) => check)
    expect(checks).not.toContain('outlets')
    expect(checks).not.toContain('outlet_protection')
    expect(checks).not.toContain('electrical_load')
  })
})
