import { expect, it } from 'vitest'
import { controllerCutOffC } from '../../../core/sizing/heater-stuck.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { caution } from '../../../core/startup/cautions.ts'
import { findingOf, group, one, reportOf } from './sample-build.ts'
import { figuresOf, told } from './told.ts'

const heaters = (powerW: number, quantity = 1, externalController = false) => ({
  heaters: [one('Torvane', { powerW, externalController }, quantity)],
})

it('judges one heater stuck on, not their sum', () => {
  const single = findingOf('heater_stuck', heaters(100))
  expect(findingOf('heater_stuck', heaters(100, 3)).value).toEqual(single.value)
})

it('is warmer than the same tank at usual losses', () => {
  // Own: 150 W under a lid in a room of 24 °C settle at 31.47 °C at usual losses, pump and lamp apart.
  expect(findingOf('heater_stuck', { ...heaters(150), filters: [], lights: [] }).value?.value).toBeGreaterThan(31.47)
})

it('counts pump and lamp', () => {
  const alone = findingOf('heater_stuck', { ...heaters(100), filters: [], lights: [] })
  const withPump = findingOf('heater_stuck', heaters(100))
  expect(withPump.value?.value ?? NaN).toBeGreaterThan(alone.value?.value ?? NaN)
})

it('does not fit past the danger mark, with the hours it takes, and offers powers that would fit', () => {
  const found = findingOf('heater_stuck', heaters(300), { warmestRoomC: 23 })
  expect(found.verdict).toBe('does_not_fit')
  expect(found.limit).toMatchObject({ kind: 'at_most', high: { value: 32, unit: 'degC' } })
  expect(found.margin).toMatchObject({ unit: 'K' })
  expect(found.margin?.value).toBeLessThan(0)
  expect(sayPhrase(found.reason, METRIC)).toMatch(/after \d+ h/)
  expect(found.action?.want).toMatchObject({ slot: 'heat' })
  const { quantity: count = 0, minimum, maximum } = found.action?.want ?? {}
  for (const powerW of [minimum?.powerW ?? 0, maximum?.powerW ?? 0]) {
    const chosen = heaters(powerW, count)
    expect(findingOf('heater_stuck', chosen, { warmestRoomC: 23 }).verdict).toBe('fits')
    expect(findingOf('heater_holds', chosen, { warmestRoomC: 23 }).verdict).toBe('fits')
  }
})

it('judges an open tank as if somebody had laid a lid on, and says so', () => {
  const lidded = findingOf('heater_stuck', heaters(100))
  const open = findingOf('heater_stuck', { lid: null, ...heaters(100) })
  const mesh = findingOf('heater_stuck', { lid: one('Lid', { lengthMm: 1210, widthMm: 450, cover: 'mesh' as const }), ...heaters(100) })
  expect(open.value).toEqual(lidded.value)
  expect(mesh.value).toEqual(lidded.value)
  expect(sayPhrase(open.reason, METRIC)).toMatch(/with a lid laid on/)
  expect(sayPhrase(lidded.reason, METRIC)).not.toMatch(/laid on/)
  expect(open.source.text).toMatch(/a lid on whether or not the build has one/)
})

it('keeps an open tank open at usual losses, where it is let off as marginal', () => {
  // Past the mark with a lid laid on: under the lid itself it does not fit, open it would stay below.
  const danger = { livestock: { ...group('small-tropical'), dangerC: 31 } }
  expect(findingOf('heater_stuck', heaters(150), danger).verdict).toBe('does_not_fit')
  const open = findingOf('heater_stuck', { lid: null, ...heaters(150) }, danger)
  expect(open.verdict).toBe('marginal')
  expect(sayPhrase(open.reason, METRIC)).toMatch(/Without it and with every side free it would stay at \d+\.\d °C/)
})

it('goes on reckoning the evaporation of an open tank as open', () => {
  const low = (lid: null | undefined) => reportOf(lid === null ? { lid } : {}).figures.evaporationLPerDay?.low ?? NaN
  // A tight lid lets out a tenth.
  expect(low(null) / low(undefined)).toBeCloseTo(10, 0)
})

it('offers no power that would be as marginal as what is there', () => {
  const room = { coldestRoomC: 17, warmestRoomC: 25 }
  const want = findingOf('heater_stuck', heaters(400), room).action?.want
  const found = findingOf('heater_stuck', heaters(want?.minimum.powerW ?? 0, want?.quantity), room)
  expect(found.verdict).toBe('marginal')
  expect(found.action?.want).toBeUndefined()
  expect(sayPhrase(found.action?.text ?? [], METRIC)).toMatch(
    /No power that holds.*external controller against one that sticks on, or a room kept more even/,
  )
})

it('lets a controller cut off no lower than the target', () => {
  const livestock = { ...group('small-tropical'), targetC: 31.6, highestC: 31.6 }
  expect(findingOf('heater_stuck', heaters(300, 1, true), { livestock }).value?.value).toBe(31.6)
})

it('is marginal within a kelvin of the danger mark', () => {
  const found = findingOf('heater_stuck', heaters(100))
  const danger = (dangerC: number) =>
    findingOf('heater_stuck', heaters(100), { livestock: { ...group('small-tropical'), dangerC } }).verdict
  const reached = found.value?.value ?? NaN
  expect(danger(reached + 1)).toBe('fits')
  expect(danger(reached + 0.9)).toBe('marginal')
  expect(danger(reached)).toBe('marginal')
})

it('is marginal past the mark at the low-loss end alone, and does not fit past it at usual losses too', () => {
  const found = findingOf('heater_stuck', heaters(100))
  const at = (dangerC: number) => findingOf('heater_stuck', heaters(100), { livestock: { ...group('small-tropical'), dangerC } })
  const past = at((found.value?.value ?? NaN) - 0.1)
  expect(past.verdict).toBe('marginal')
  const usual = Number(/stay at (\d+\.\d) °C/.exec(sayPhrase(past.reason, METRIC))?.[1])
  expect(usual).toBeLessThan(found.value?.value ?? NaN)
  expect(at(usual).verdict).toBe('marginal')
  expect(at(usual - 0.1).verdict).toBe('does_not_fit')
})

it('says so where no power serves both ends', () => {
  const found = findingOf('heater_stuck', heaters(200), { coldestRoomC: 15, warmestRoomC: 29 })
  expect(found.verdict).toBe('does_not_fit')
  expect(found.action?.want).toBeUndefined()
  expect(sayPhrase(found.action?.text ?? [], METRIC)).toMatch(/No power both holds.*external controller/)
})

it('takes an external controller’s cut-off as the temperature that is reached', () => {
  const found = findingOf('heater_stuck', heaters(300, 1, true))
  expect(found.verdict).toBe('fits')
  expect(found.value?.value).toBe(group('small-tropical').highestC)
  expect(found.assumed).toContain('cut-off of the controller')
})

it('names the heater that the controller comes with, since it stands on no list of its own', () => {
  const found = findingOf('heater_stuck', { heaters: [one('Torvane Pair 300', { powerW: 300, externalController: true })] })
  expect(sayPhrase(found.reason, METRIC)).toContain(
    "the heater's own controller (Torvane Pair 300), set to 28.0 °C, switches it off first. Test it every month.",
  )
})

it('sets a controller to comfort, clear of danger and not below the target', () => {
  expect(controllerCutOffC({ targetC: 25, highestC: 28, dangerC: 32 })).toBe(28)
  expect(controllerCutOffC({ targetC: 25, highestC: 31.5, dangerC: 32 })).toBe(31)
  expect(controllerCutOffC({ targetC: 31.6, highestC: 31.6, dangerC: 32 })).toBe(31.6)
})

it('offers a controller in place of other heaters only where one sticks: it adds neither heat nor a spare', () => {
  const words = (check: 'heater_stuck' | 'heater_holds' | 'heater_spare', powerW: number, room = {}) =>
    sayPhrase(findingOf(check, heaters(powerW), room).action?.text ?? [], METRIC)
  expect(words('heater_stuck', 300, { warmestRoomC: 23 })).toMatch(
    /^Put in 3 heaters of 65 W each, or have an external controller switch the one in this build\. None of that power is commonly sold\. Together/,
  )
  expect(words('heater_holds', 50)).toMatch(/^Put in \d heaters of [^,]* each\. Together/)
  expect(words('heater_spare', 200)).toMatch(/^Put in \d heaters of [^,]* each\. Together/)
})

it('is not asked of a tank without heaters', () => {
  expect(reportOf({ heaters: [] }).findings.some(({ check }) => check === 'heater_stuck' || check === 'heater_spare')).toBe(false)
})

it('comes first of all findings that hurt', () => {
  const report = reportOf(heaters(300))
  const first = report.findings[report.pageOne[0] ?? -1]
  expect(first?.check).toBe('heater_stuck')
  expect(first?.caution).toBe(caution('unplug'))
})

it('offers powers that stay below the mark at usual losses where none does at the low-loss end', () => {
  const room = { coldestRoomC: 17, warmestRoomC: 25 }
  const want = findingOf('heater_stuck', heaters(400), room).action?.want
  expect(want).toBeDefined()
  const chosen = heaters(want?.minimum.powerW ?? 0, want?.quantity)
  expect(findingOf('heater_stuck', chosen, room).verdict).toBe('marginal')
  expect(findingOf('heater_holds', chosen, room).verdict).toBe('fits')
})

/**
 * Own, by a second program (bisection and midpoint rule over the same balance), of the lidded tank of 75 gallons in a room of 24 °C with 35 W of pump and
 * lamp: 100 W settle at 34.34 °C at the low-loss end, 30.70 °C at usual losses, and pass 32 °C after 31.9 h; 150 W at 38.17 and 33.26 °C, after 17.4 h.
 */
it('says where it settles, when it passes the mark, and what would keep it below', () => {
  const start = 'In the warmest room, 24.0 °C, a heater stuck on (Torvane) would take the water to'
  const passes = 'It passes the danger mark of these animals, 32.0 °C,'
  const hundred = findingOf('heater_stuck', heaters(100, 2))
  expect(told(hundred)).toMatchObject({
    verdict: 'marginal',
    reason: `${start} 34.3 °C where back and bottom keep the heat in. ${passes} after 32 h. With every side free it would stay at 30.7 °C.`,
    action:
      'No power that holds the coldest room is safer when stuck on. What would: heaters of 186 W in all, with an external controller against one that sticks on, or a room kept more even.',
    assumed: [],
  })
  expect(figuresOf(hundred)).toMatchObject({ value: 34.3, high: 32, margin: -2.3 })
  expect(told(findingOf('heater_stuck', heaters(150)))).toMatchObject({
    verdict: 'does_not_fit',
    reason: `${start} 38.2 °C where back and bottom keep the heat in. ${passes} after 17 h.`,
  })
  // 50 W: 30.5 °C.
  expect(told(findingOf('heater_stuck', heaters(50)))).toMatchObject({
    verdict: 'fits',
    reason: `${start} 30.5 °C; these animals are in danger from 32.0 °C.`,
    action: null,
  })
  // The open tank with a lid laid on settles as the lidded one; without it at usual losses at 28.26 °C.
  expect(told(findingOf('heater_stuck', { lid: null, ...heaters(100) })).reason).toBe(
    `${start} 34.3 °C with a lid laid on where back and bottom keep the heat in. ${passes} after 32 h. Without it and with every side free it would stay at 28.3 °C.`,
  )
  expect(hundred.source.tag).toBe('from_memory')
})

it('tells a mark that is just reached as reached, at either end', () => {
  const words = (dangerC: number) =>
    told(findingOf('heater_stuck', heaters(100), { livestock: { ...group('small-tropical'), dangerC } })).reason
  expect(words(34.3)).toMatch(/take the water to 34\.3 °C; these animals are in danger from 34\.3 °C\.$/)
  expect(words(30.7)).toMatch(/With every side free it would stay at 30\.7 °C\.$/)
  expect(words(30.6)).not.toContain('With every side free')
})

it('looks at the strongest of those that no controller switches', () => {
  const several = (...specs: Array<{ powerW: number; externalController?: boolean }>) => ({
    heaters: specs.map((spec, index) => one(`Torvane ${index + 1}`, spec)),
  })
  const found = findingOf('heater_stuck', several({ powerW: 50 }, { powerW: 100 }, { powerW: 300, externalController: true }))
  expect(found.value?.value).toBe(34.3)
  expect(told(found).reason).toContain('(Torvane 2)')
  const all = findingOf('heater_stuck', several({ powerW: 50, externalController: true }, { powerW: 300, externalController: true }))
  // 300 W: 49.36 °C.
  expect(told(all).reason).toMatch(
    /^A thermostat that sticks would take the water to 49\.4 °C, but the heater's own controller \(Torvane 2\)/,
  )
  expect(figuresOf(all)).toMatchObject({ value: 28, high: 32, margin: 4 })
  const strongFirst = findingOf(
    'heater_stuck',
    several({ powerW: 300, externalController: true }, { powerW: 50, externalController: true }),
  )
  expect(told(strongFirst).reason).toContain('(Torvane 1)')
})

it('names what it took for the room, the fill and the powers', () => {
  const assumed = findingOf(
    'heater_stuck',
    { heaters: [one('Torvane', {})], filters: [one('Pellick', {})] },
    { assumed: ['warmestRoomC', 'substrateDepthMm'] },
  )
  expect(assumed.assumed).toEqual(['power of the heater', 'power of the filter', 'warmest room temperature', 'substrate depth'])
  const lid = findingOf('heater_stuck', { heaters: [one('Torvane', { powerW: 10 })], lid: one('a lid', { lengthMm: 1210, widthMm: 450 }) })
  expect(lid.assumed).toEqual(['what the lid is made of'])
})
