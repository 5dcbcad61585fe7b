import { gzipSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import { METRIC } from '../../../core/units/say.ts'
import { setupPage } from '../../../web/pages/setup-page.ts'
import { sayDue } from '../../../web/pages/setup-lists.ts'
import { setupProps } from './sample-pages.ts'
import { sampleQuote } from './sample-quote.ts'

const page = (doneCount: number, change: Parameters<typeof setupProps>[1] = {}): string => String(setupPage(setupProps(doneCount, change)))
const { steps } = setupProps(0).plan
const text = (html: string): string => html.replace(/<[^>]+>/g, ' ').replace(/\s+/g, ' ')

describe('the startup checklist on a phone', () => {
  it('shows one next step with a button that repeats its criterion', () => {
    const html = page(3)
    expect(html).toContain(`<h1 id="h-step">${steps[3]!.title}</h1>`)
    expect(html).toContain(`<input type="hidden" name="step" value="${steps[3]!.id}">`)
    expect(html.match(/class="btn main"/g)).toHaveLength(1)
    expect(text(html)).toContain(steps[3]!.done)
    expect(text(html)).toContain('Stop and ask if')
  })
  it('counts days and steps', () => {
    expect(page(6)).toContain(`Day 4, Tue, Nov 3 · 6 of ${steps.length} done`)
  })
  it('takes a tick back', () => {
    expect(page(1)).toMatch(new RegExp(`name="step" value="${steps[0]!.id}"><input type="hidden" name="done" value="0">`))
  })
  it('ends in peace when all steps are done', () => {
    const html = page(steps.length)
    expect(html).toContain('All steps are done')
    expect(html).not.toContain('Your next step')
  })
  it('never promises a date where readings decide', () => {
    const dependent = { ...steps[0]!, earliestDay: null }
    expect(sayDue(dependent, { startedOn: '2026-10-31', today: '2026-11-03' })).toBe('after readings')
    expect(sayDue({ ...dependent, earliestDay: 5 }, { startedOn: '2026-10-31', today: '2026-11-03' })).toBe('Nov 5')
    expect(sayDue({ ...dependent, earliestDay: 2 }, { startedOn: '2026-10-31', today: '2026-11-03' })).toBe('today')
    expect(sayDue({ ...dependent, earliestDay: 5 }, { startedOn: null, today: '2026-11-03' })).toBe('day 6')
  })
  it('asks for the start while there is none', () => {
    expect(page(0, { startedOn: null })).toContain('When did you start?')
    expect(page(0)).not.toContain('When did you start?')
  })
  it('draws the drip loop of this room', () => {
    const index = steps.findIndex((step) => step.drawing === 'drip_loop')
    const dripLoop = { neededMm: 1700, lowPointMm: 200, exitHeightMm: 1300, outletHeightMm: 300, distanceMm: 600 }
    expect(page(index, { dripLoop, units: METRIC })).toContain('>Low point, 20 cm<')
    expect(page(index, { dripLoop: null })).not.toContain('loop-cord')
  })
  it('calls where the install says to ask', () => {
    expect(page(0)).toContain('<a href="tel:5550100">Ask the club, 555-0100</a>')
  })
})

describe('what hangs on the tank', () => {
  it('names no customer, no advisor, no store and no price', () => {
    const said = text(page(4))
    const quote = sampleQuote()
    for (const name of ['Ines', 'Tillish', quote.advisor, ...quote.inputs.stores.map((store) => store.name), quote.number])
      expect(said).not.toContain(name)
    expect(said).not.toMatch(/\$\s?\d|\d\.\d\d USD/)
  })
  it('has every step on paper with a box of its own, ticked where it is done', () => {
    const html = page(2)
    expect(html.match(/class="box( ticked)?"/g)).toHaveLength(steps.length)
    expect(html.match(/class="box ticked"/g)).toHaveLength(2)
  })
})

describe('water tests', () => {
  it('are listed newest first as they were read', () => {
    const html = page(4)
    expect(html.indexOf('Nov 8')).toBeLessThan(html.indexOf('Nov 6'))
    expect(html).toContain('>0.25<')
    expect(html).toContain('>1.5<')
    expect(html).toContain('77.4 °F')
    expect(html).toContain('not tested')
  })
  it('keep what was typed and say at the field what was wrong', () => {
    const html = page(4, {
      faults: [{ field: 'ammonia', message: 'Ammonia is 0 to 20 mg/L. "2o" has a letter in it.' }],
      typed: { ammonia: '2o', ph: '7.4' },
    })
    expect(html).toMatch(/name="ammonia" type="text" value="2o"[^>]*aria-describedby="reading-ammonia-fault" aria-invalid="true"/)
    expect(html).toContain('<p class="fault" id="reading-ammonia-fault">')
    expect(html).toContain('value="7.4"')
    expect(html).toContain('<details class="new-reading" open>')
  })
  it('escape a note', () => {
    const [reading] = setupProps(0).readings
    expect(page(4, { readings: [{ ...reading!, note: '<b onclick=x>' }] })).not.toContain('<b onclick')
  })
})

describe('what every page without script keeps to', () => {
  const html = page(11)
  it('holds no script, no inline style and nothing to index', () => {
    expect(html).not.toMatch(/<script|\son\w+=|style="|javascript:/i)
    expect(html).toContain('content="noindex, nofollow"')
  })
  it('weighs at most 15 kB at any step', () => {
    for (const doneCount of [0, 5, 11, steps.length]) expect(gzipSync(page(doneCount)).length).toBeLessThanOrEqual(15_000)
  })
  it('has every id once', () => {
    const ids = [...html.matchAll(/\sid="([^"]+)"/g)].map((match) => match[1])
    expect(new Set(ids).size).toBe(ids.length)
  })
})
