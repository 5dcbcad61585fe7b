import { describe, expect, it } from 'vitest'
import { liftPeople } from '../../../core/sizing/empty-lift.ts'
import { CAUTIONS } from '../../../core/startup/cautions.ts'
import { STEP_GROUPS, type Step } from '../../../core/startup/setup-plan.ts'
import { startupPlan } from '../../../core/startup/startup-plan.ts'
import { METRIC, sayPhrase, US } from '../../../core/units/say.ts'
import { sampleSubject, sizedSubject } from './sample-subject.ts'

type Change = Parameters<typeof sampleSubject>[0]
const planOf = (change: Change = {}) => startupPlan(sampleSubject(change))
const ids = (change: Change = {}) => planOf(change).steps.map((step) => step.id)
function stepIn(change: Change, id: string): Step {
  const found = planOf(change).steps.find((step) => step.id === id)
  if (!found) throw new Error(`no step ${id} in ${ids(change).join(', ')}`)
  return found
}
const amount = (step: Step, label: string): string =>
  sayPhrase(step.amounts.find((each) => each.label === label)?.value ?? ['(no such amount)'], METRIC)
const wholeText = (step: Step): string =>
  [
    step.title,
    ...[step.why, step.stopAndAsk, ...step.actions, ...step.amounts.map((each) => each.value)].map((each) => sayPhrase(each, METRIC)),
    step.done,
  ].join(' ')

describe('startup plan', () => {
  it('goes through every group in order, each step once', () => {
    const plan = planOf()
    const order = plan.steps.map((step) => STEP_GROUPS.indexOf(step.group))
    expect(order).toEqual([...order].sort((a, b) => a - b))
    expect(new Set(order).size).toBe(STEP_GROUPS.length)
    expect(new Set(plan.steps.map((step) => step.id)).size).toBe(plan.steps.length)
  })

  it('says what, why, how long, when to stop and a criterion in every step', () => {
    for (const step of planOf().steps) {
      for (const text of [step.title, sayPhrase(step.why, US), step.howLong, sayPhrase(step.stopAndAsk, US), step.done])
        expect(text.trim().length, step.id).toBeGreaterThan(5)
      expect(step.actions.length, step.id).toBeGreaterThan(0)
    }
  })

  it('never makes a step due before an earlier one', () => {
    const days = planOf().steps.flatMap((step) => (step.earliestDay === null ? [] : [step.earliestDay]))
    expect(days).toEqual([...days].sort((a, b) => a - b))
  })

  it('computes everything for a whole build and says so', () => expect(planOf().notComputed).toEqual([]))

  it('is titled by size and water, without a name', () => expect(sayPhrase(planOf().title, METRIC)).toBe('121.9 cm tank, 238 L of water'))
})

describe('amounts', () => {
  it('fills the leak test in quarters of the volume to the rim', () => {
    const step = stepIn({}, 'leak-fill')
    expect(step.amounts.slice(0, 4).map((each) => sayPhrase(each.value, METRIC))).toEqual([
      '69 L in all',
      '137 L in all',
      '206 L in all',
      '274 L in all',
    ])
  })

  it('doses conditioner by the water and not by the label of the tank: 23.8 mL at 0.1 mL a litre', () => {
    expect(amount(stepIn({}, 'fill'), 'Conditioner')).toBe('24 mL of Stillwell 500 mL')
  })

  it('weighs 1.8 g of ammonium chloride for 237.7 L', () =>
    expect(amount(stepIn({}, 'first-ammonia'), 'How much')).toBe('1.8 g of Stillwell ammonium chloride'))

  it('measures 6.0 mL of a 10 % solution for 237.7 L', () => {
    const gear = { ammoniaSources: [{ name: 'Stillwell drops', quantity: 1, spec: { form: 'ammonia_solution', strength: 0.1 } as const }] }
    expect(amount(stepIn({ gear }, 'first-ammonia'), 'How much')).toBe('6.0 mL of Stillwell drops')
  })

  it('refuses a solution above 10 %', () => {
    const gear = { ammoniaSources: [{ name: 'Strong drops', quantity: 1, spec: { form: 'ammonia_solution', strength: 0.25 } as const }] }
    expect(planOf({ gear }).notComputed).toEqual([
      'Ammonia dose: Strong drops is stronger than 10 %. Use ammonium chloride or a weaker solution.',
    ])
    expect(wholeText(stepIn({ gear }, 'first-ammonia'))).not.toMatch(/mL of Strong drops/)
  })

  it('says the basis of the dose and what kits of other bases show', () => {
    expect(amount(stepIn({}, 'first-ammonia'), 'Your kit then reads')).toBe(
      'between 2.0 and 2.6, by the kit: 2.0 if its leaflet says N, 2.4 if NH3, 2.6 if NH4',
    )
  })

  it('changes three quarters of the water at the end, with its own conditioner', () => {
    const step = stepIn({}, 'large-change')
    expect(amount(step, 'Out and in')).toBe('178 L (three quarters)')
    expect(amount(step, 'Conditioner')).toBe('17.8 mL of Stillwell 500 mL, into the new water')
  })

  it('gives the cord that a loop needs outside the water', () => {
    const step = stepIn({}, 'drip-loops')
    expect(amount(step, 'How many')).toBe("4 cords: 2 heaters, filter, light; and the power strip's own, where there is one")
    expect(amount(step, 'Cord needed')).toBe('170 cm (67 in) outside the water, from the rim')
    expect(amount(step, 'How low')).toBe('lowest point at least 10 cm (4 in) under the outlet it is plugged into')
  })

  it('tells least lengths rounded up, first in the unit that the install reads', () => {
    const plan = startupPlan({ ...sampleSubject({}), install: { country: 'US', units: US } })
    const step = plan.steps.find(({ id }) => id === 'drip-loops')!
    expect(amount(step, 'How low')).toBe('lowest point at least 4 in (10 cm) under the outlet it is plugged into')
    expect(amount(step, 'Cord needed')).toMatch(/^67 in \(170 cm\) outside the water/)
  })

  it('asks for three people at 57.3 kg, 25 kg each', () => expect(liftPeople(57.2834, 1219)).toBe(3))

  it('lets nobody lift 20 kg or 900 mm of glass alone', () => {
    expect([liftPeople(19.9, 899), liftPeople(20, 600), liftPeople(12, 900), liftPeople(50, 1000), liftPeople(50.1, 600)]).toEqual([
      1, 2, 2, 2, 3,
    ])
  })
})

describe('what was bought decides the steps', () => {
  it('does not rinse active soil, and doses nothing before its own ammonia is under 1 mg/L', () => {
    const gear = { substrates: [{ name: 'Millrace soil', quantity: 3, spec: { type: 'active_soil' } as const }] }
    expect(ids({ gear })).not.toContain('rinse-substrate')
    expect(wholeText(stepIn({ gear }, 'lay-soil'))).toContain('Do not rinse it')
    expect(amount(stepIn({ gear }, 'soil-ammonia'), 'Dose nothing until')).toBe('ammonia reads under 1 mg/L')
    expect(amount(stepIn({ gear }, 'soil-ammonia'), 'Change water above')).toBe('4 mg/L: 119 L (half), every day')
    expect(ids({ gear }).indexOf('soil-ammonia')).toBeLessThan(ids({ gear }).indexOf('first-ammonia'))
    expect(stepIn({ gear }, 'first-ammonia').earliestDay).toBeNull()
  })

  it('asks the age of a heater that was owned, and not of a new one', () => {
    const gear = { heaters: [{ name: 'old heater', quantity: 1, spec: { powerW: 200 }, owned: true }] }
    expect(wholeText(stepIn({ gear }, 'used-heater'))).toContain('more than three years')
    expect(ids()).not.toContain('used-heater')
  })

  it('holds a used tank full for three days and cleans it first', () => {
    const tank = { name: 'old tank', quantity: 1, spec: { lengthMm: 900, widthMm: 400, heightMm: 400 }, owned: true }
    expect(amount(stepIn({ gear: { tank } }, 'leak-hold'), 'Hold')).toBe('72 h, because the tank is used')
    expect(stepIn({ gear: { tank } }, 'used-tank').caution).toContain('bleach')
  })

  it('has no heater step without a heater and no loops without cords', () => {
    const none = { heaters: [], filters: [], lights: [] }
    expect(ids({ gear: none })).not.toContain('heater')
    expect(ids({ gear: none })).not.toContain('drip-loops')
  })

  it('says what a stand must be where there is none', () => {
    expect(stepIn({ gear: { stand: null } }, 'place-stand').title).toBe('Choose what the tank stands on')
  })

  it('counts the ammonia that chloramine leaves, and asks for a conditioner that binds it', () => {
    const change: Change = {
      conditions: { disinfectant: 'chloramine' },
      gear: { conditioners: [{ name: 'Plain', quantity: 1, spec: { doseMlPerL: 0.1, bindsAmmonia: false } }] },
    }
    expect(sayPhrase(stepIn(change, 'fill').why, METRIC)).toContain('0.79 mg/L')
    expect(sayPhrase(stepIn(change, 'fill').stopAndAsk, METRIC)).toContain('binds ammonia')
  })

  it('needs no conditioner for water without a disinfectant', () => {
    expect(amount(stepIn({ conditions: { disinfectant: 'none' } }, 'fill'), 'Conditioner')).toContain('none')
  })

  it('mixes salt water a day ahead', () => {
    const livestock = { ...sampleSubject().conditions.livestock, water: 'salt' as const }
    const order = ids({ conditions: { livestock } })
    expect(order.indexOf('mix-salt')).toBe(order.indexOf('fill') - 1)
  })

  it('sends someone without a protective device to an electrician first', () => {
    expect(wholeText(stepIn({ gear: { power: [] } }, 'test-protection'))).toContain('licensed electrician')
    expect(stepIn({}, 'test-protection').title).toBe('Press TEST on the GFCI')
  })
})

describe('what cannot be computed', () => {
  it('is named, and the step says what to read off the label', () => {
    const change: Change = { gear: { conditioners: [{ name: 'Nameless bottle', quantity: 1, spec: {} }] } }
    expect(planOf(change).notComputed).toEqual([
      'Conditioner dose: Nameless bottle states none. Read millilitres for each litre off its label.',
    ])
    expect(amount(stepIn(change, 'fill'), 'Conditioner')).toBe('by its label, for 238 L of water and not for the size on the box')
  })

  it('names every amount that hangs on an unknown inside of the tank', () => {
    const plan = planOf({
      figures: { waterVolumeL: undefined, grossVolumeL: undefined, brimMassKg: undefined, emptyMassKg: undefined, dripLoop: undefined },
    })
    expect(plan.waterVolumeL).toBeNull()
    expect(plan.notComputed).toHaveLength(7)
    for (const step of plan.steps) expect(wholeText(step), step.id).not.toMatch(/NaN|undefined|null|Infinity/)
  })
})

describe('cautions', () => {
  it('are eight, each said once', () => {
    expect(CAUTIONS).toHaveLength(8)
    expect(new Set(CAUTIONS.map((each) => each.id)).size).toBe(8)
  })

  it('never send ammonia above 10 %, and keep bleach from it', () => {
    const text = CAUTIONS.find((each) => each.id === 'bleach')?.text ?? ''
    expect(text).toMatch(/Never let bleach/)
    expect(text).toMatch(/stronger than 10 %/)
  })
})

describe('the weight that the floor meets', () => {
  const told = (subject: ReturnType<typeof sampleSubject>) =>
    startupPlan(subject)
      .steps.find(({ id }) => id === 'place-stand')
      ?.amounts.map(({ label, value }) => [label, sayPhrase(value, METRIC)])

  const tank = {
    name: 'Wendlemere 75',
    quantity: 1,
    spec: { lengthMm: 1219.2, widthMm: 457.2, heightMm: 533.4, glassMm: 10, bottomMm: 10, material: 'glass' as const },
  }

  it('is told for the leak test, before there is a bed, and with it', () => {
    // 57.28 kg of glass and 274.41 L to the rim are 332 kg; 41.68 kg of grains in the place of 15.73 L make 358 (reference tank A), less 0.3 % for warm water.
    expect(told(sizedSubject({ gear: { tank, substrates: [], stand: null } }))?.slice(0, 2)).toEqual([
      ['Leak test, no bed', 'about 331 kg'],
      ['Full, with its bed', 'about 357 kg'],
    ])
    expect(told(sizedSubject({ gear: { tank, substrates: [], stand: null, notNeeded: { substrate: 'bare' } } }))?.[0]?.[0]).toBe(
      'Full to the rim',
    )
    const filled = startupPlan(sizedSubject({ gear: { tank, substrates: [], stand: null } })).steps.find(({ id }) => id === 'leak-fill')
    expect(filled?.amounts.slice(-1).map(({ value }) => sayPhrase(value, METRIC))).toEqual(['about 331 kg'])
  })

  it('lays the bed as deep as what is bought makes it', () => {
    // 28.5 L on 1199.2 × 437.2 mm of floor are 54 mm; a bed without any pack stays as deep as was asked.
    const bags = [{ name: 'Millrace gravel', quantity: 5, spec: { type: 'gravel', packVolumeL: 5.7, packMassKg: 8 } as const }]
    const deep = (substrates: typeof bags) =>
      startupPlan(sizedSubject({ gear: { tank, substrates } }))
        .steps.flatMap(({ amounts }) => amounts)
        .find(({ label }) => label === 'How deep')?.value
    expect(sayPhrase(deep(bags) ?? [], METRIC)).toBe('about 54 mm, a little more at the back')
    const unstated = [{ ...bags[0]!, spec: { type: 'gravel' } as unknown as (typeof bags)[0]['spec'] }]
    expect(sayPhrase(deep(unstated) ?? [], METRIC)).toBe('about 50 mm, a little more at the back')
  })

  it('says so where it counts the stand', () => {
    const stand = { name: 'Thornby', quantity: 1, spec: { massKg: 28.1 } }
    expect(told(sizedSubject({ gear: { tank, substrates: [], stand } }))?.[1]).toEqual([
      'Full, with its bed',
      'about 385 kg, stand included',
    ])
  })
})
