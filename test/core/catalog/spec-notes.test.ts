import { describe, expect, it } from 'vitest'
import { CSV_EXAMPLES } from '../../../core/catalog/csv-example.ts'
import { KINDS, type Kind } from '../../../core/catalog/kinds.ts'
import { specNotes } from '../../../core/catalog/spec-notes.ts'
import type { Spec } from '../../../core/catalog/spec.ts'
import { assembleBuild } from '../../../core/quote/assemble.ts'
import { buildNotes } from '../../../core/quote/row-notes.ts'
import { METRIC, sayPhrase, US } from '../../../core/units/say.ts'
import { productOf, sampleInputs, sampleTank } from '../quote/sample-inputs.ts'

const idsOf = (kind: Kind, spec: Spec, owned = false) => specNotes({ kind, spec }, { owned }).map(({ id }) => id)

/** Each line is common practice of the trade. */
describe('what a spec asks for by itself', () => {
  it.each([
    ['stand', { surface: 'particle_board' }, ['stand-particle-board']],
    ['stand', { surface: 'metal', heightMm: 1000 }, ['stand-tall']],
    ['stand', { surface: 'plywood', heightMm: 750 }, []],
    ['tank', { ...sampleTank.spec }, ['tank-flat-bottom']],
    ['tank', { lengthMm: 900, widthMm: 450, heightMm: 450, style: 'rimmed' }, ['tank-rimmed']],
    ['substrate', { type: 'active_soil' }, ['substrate-active']],
    ['substrate', { type: 'gravel' }, []],
    ['conditioner', { bindsAmmonia: false }, ['conditioner-chlorine']],
    ['ammonia_source', { form: 'ammonia_solution', strength: 0.25 }, ['ammonia-bleach', 'ammonia-strong']],
    ['ammonia_source', { form: 'ammonia_solution', strength: 0.1 }, ['ammonia-bleach']],
    ['ammonia_source', { form: 'ammonium_chloride', strength: 1 }, []],
    ['air_pump', {}, ['air-pump-valve']],
    ['air_pump', { checkValve: true }, []],
    ['co2', { type: 'pressurised' }, ['co2-bottle', 'co2-night']],
    ['timer', { motorRated: true }, []],
    ['timer', {}, ['timer-load']],
    ['livestock', { jumps: true, leastTogether: 6 }, ['livestock-cycled', 'livestock-group', 'livestock-jumps']],
    ['service', { type: 'drilling' }, ['service-drilling']],
    ['service', { type: 'delivery' }, []],
  ] as ReadonlyArray<[Kind, Spec, string[]]>)('of a %s with %j', (kind, spec, ids) => {
    expect(idsOf(kind, spec)).toEqual(ids)
  })
  it('is more of a heater that was used before', () => {
    expect(idsOf('heater', { powerW: 100, adjustable: true })).toEqual([])
    expect(idsOf('heater', { powerW: 100, adjustable: true }, true)).toEqual(['heater-age'])
  })
  it('is told in the reader’s units', () => {
    const [note] = specNotes({ kind: 'stand', spec: { heightMm: 914.4 } })
    expect(note && sayPhrase(note.text, US)).toBe('Fix it to the wall: at 36 in it can be pulled over.')
    expect(note && sayPhrase(note.text, METRIC)).toContain('91.4 cm')
  })
  it.each(KINDS)('has a source and ends in a full stop for every %s of the template', (kind) => {
    for (const { text, source } of specNotes({ kind, spec: CSV_EXAMPLES[kind].spec }, { owned: true })) {
      expect(sayPhrase(text, METRIC)).toMatch(/\.$/)
      expect(source.text).not.toBe('')
    }
  })
})

describe('the notes of a build', () => {
  const stand = (name: string) => productOf('stand', name, { surface: 'particle_board' })
  const build = assembleBuild(
    sampleInputs([sampleTank, stand('Thornby Bench 36'), productOf('heater', 'Torvane 100 W', { powerW: 100 })]),
    0,
  )
  it('stand on the rows of what asks for them, and nowhere else', () => {
    expect(build.rows.find(({ slot }) => slot === 'carry_tank')?.notes?.[0]).toMatch(/^Must stay dry/)
    expect(build.rows.find(({ slot }) => slot === 'heat')).not.toHaveProperty('notes')
  })
  it('are told once, with what they are about', () => {
    const two = assembleBuild(
      sampleInputs([sampleTank, productOf('air_pump', 'Pellick Air 1', {}), productOf('air_pump', 'Pellick Air 2', {})]),
      0,
    )
    expect(buildNotes(two).filter(({ text }) => text.includes('check valve'))).toMatchObject([{ about: 'Pellick Air 1, Pellick Air 2' }])
  })
  it('ask the age of a heater that somebody owns, though it is no product of the catalog', () => {
    const inputs = sampleInputs([sampleTank])
    const [first] = inputs.draft.builds
    if (!first) throw new Error('no build')
    const owned = { id: 'o', answer: 'owned', slot: 'heat', productId: null, description: 'my heater', quantity: 1, spec: null } as const
    const draft = { ...inputs.draft, builds: [{ ...first, lines: [...first.lines, owned] }] }
    expect(buildNotes(assembleBuild({ ...inputs, draft }, 0))).toContainEqual({
      about: 'my heater',
      text: 'Already used: replace it if it is over 3 years old, or nobody knows.',
    })
  })
})
