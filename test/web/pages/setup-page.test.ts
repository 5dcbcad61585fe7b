import { gzipSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import { readerFirst } from '../../../core/startup/reader-first.ts'
import { METRIC, sayPhrase, US } from '../../../core/units/say.ts'
import { setupPage } from '../../../web/pages/setup-page.ts'
import { sayDue } from '../../../web/pages/setup-lists.ts'
import { setupProps } from './sample-pages.ts'
import { sampleQuote } from './sample-quote.ts'

const page = (doneCount: number, change: Parameters<typeof setupProps>[1] = {}): string => String(setupPage(setupProps(doneCount, change)))
const { plan } = setupProps(0)
const { steps } = plan

it('says that its quote was withdrawn, to whoever has bought and to whoever has not', () => {
  expect(page(3)).not.toContain('withdrawn')
  const html = page(3, { quoteWithdrawn: true })
  for (const words of ['The quote for this setup was withdrawn.', 'Ask before you buy by it.', 'Go on with the steps'])
    expect(html).toContain(words)
  expect(html).toContain('href="tel:5550100"')
})
const logIn = (html: string): string => /<ol class="tests"[^]*?<\/ol>/.exec(html)?.[0] ?? ''
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
    const [, list] =
      /<form method="post" action="\/s\/token\/tick"><input type="hidden" name="done" value="0">([^]*?)<\/form>/.exec(page(1)) ?? []
    expect(list).toContain(`<button class="btn" name="step" value="${steps[0]!.id}">Not done</button>`)
  })
  it('ends in peace when all steps are done', () => {
    const html = page(steps.length)
    expect(html).toContain('All steps are done')
    expect(html).not.toContain('Your next step')
  })
  it('never promises a date where readings decide', () => {
    const said = (earliestDay: number | null, startedOn: string | null = '2026-10-31') => {
      const step = { ...steps[0]!, earliestDay }
      return sayDue(step, { plan: { ...plan, steps: [step] }, ticks: [], startedOn, today: '2026-11-03' })
    }
    expect(said(null)).toBe('by the readings')
    expect(said(5)).toBe('Nov 5')
    expect(said(3)).toBe('today')
    expect(said(2)).toBe('after the step before')
    expect(said(5, null)).toBe('day 6 at the earliest')
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
  it('has each caution in full once on paper, and by its name after that', () => {
    const [paper = ''] = /<div class="on-paper">[^]*?<\/ol><\/div>/.exec(page(2)) ?? []
    expect(paper.match(/Unplug everything before hands go in/g)).toHaveLength(1)
    expect(paper).toMatch(/Hands in the water: as in step \d+\./)
  })
  it('has every step on paper with a box of its own, ticked where it is done', () => {
    const html = page(2)
    expect(html.match(/class="box( ticked)?"/g)).toHaveLength(steps.length)
    expect(html.match(/class="box ticked"/g)).toHaveLength(2)
  })
})

describe('what the log says and nobody may pass over', () => {
  const [first] = setupProps(0).readings
  const dangerous = { ...first!, takenOn: '2026-11-09', ammoniaMgL: 6, ph: 6.1, temperatureC: 35 }
  it('stands above the next step and above the log, in the reader’s units, with what to do and whom to ask', () => {
    const html = page(8, { readings: [dangerous] })
    const boxes = html.match(/<div class="told stop alarm" role="alert">[^]*?<\/div>/g) ?? []
    expect(boxes).toHaveLength(2)
    const said = text(boxes[0]!)
    expect(said).toContain('Ammonia reads 6 mg/L. Stop at 5 mg/L. Change half the water and dose nothing.')
    expect(said).toContain('pH reads 6.1. Stop under 6.5.')
    expect(said).toContain('The water reads 95 °F. Never at or above 89.6 °F. Unplug the heater first.')
    expect(said).toContain('Ask the club, 555-0100')
    expect(html.indexOf('told stop alarm')).toBeLessThan(html.indexOf('Your next step'))
    expect(html.lastIndexOf('told stop alarm')).toBeLessThan(html.indexOf('class="tests"'))
    expect(html.lastIndexOf('told stop alarm')).toBeGreaterThan(html.indexOf('id="h-readings"'))
  })
  it('is told for the test just written down, though a later one is right', () => {
    const later = { ...first!, id: 'r9', takenOn: '2026-11-10' }
    const readings = [{ ...dangerous, id: 'r8' }, later]
    expect(text(page(8, { readings, written: 'r8' }))).toContain('Ammonia reads 6 mg/L. Stop at 5 mg/L.')
    expect(text(page(8, { readings, written: 'r8' }))).toContain('By the test just written down, of Nov 9')
    expect(page(8, { readings, written: 'r9' })).not.toContain('told stop alarm')
  })
  it('ends with a newer test that is right, and holds through one that leaves the figure out', () => {
    const later = { ...first!, id: 'r9', takenOn: '2026-11-10' }
    expect(page(8, { readings: [dangerous, later] })).not.toContain('told stop alarm')
    expect(page(8, { readings: [dangerous, { ...later, ammoniaMgL: null }] })).toContain('Ammonia reads')
  })
  it('goes by the general marks where the plan is from before there were any', () => {
    const { marks: _none, ...old } = setupProps(0).plan
    expect(text(page(8, { plan: old, readings: [dangerous] }))).toContain('Never at or above 89.6 °F')
  })
  it('is stricter once fish are in the tank', () => {
    const after = steps.findIndex((step) => step.id === 'first-fish') + 1
    const readings = [{ ...first!, ammoniaMgL: 0.5, nitriteMgL: 0 }]
    expect(text(page(after, { readings }))).toContain('Change half the water today, feed nothing, test tomorrow.')
    expect(page(after - 1, { readings })).not.toContain('told stop alarm')
  })
})

describe.each(['ready', 'first-fish'])('the step %s', (id) => {
  const index = steps.findIndex((step) => step.id === id)
  const [first] = setupProps(0).readings
  const good = ['2026-12-01', '2026-12-02'].map((takenOn) => ({ ...first!, id: takenOn, takenOn, ammoniaMgL: 0.25, nitriteMgL: 0 }))
  const dose = { ...first!, takenOn: '2026-11-20', id: 'dose' }
  const at = (change: Parameters<typeof setupProps>[1]): string => page(index, { today: '2026-12-03', ...change })
  it('asks for a word where the log has no two good days after a dose, and not where it has', () => {
    const html = at({ readings: [] })
    expect(text(html)).toContain('The log does not bear this out yet.')
    expect(html).toContain('<input type="checkbox" name="tested" id="tested" value="1">')
    expect(html.match(/class="btn main"/g)).toHaveLength(1)
    expect(at({ readings: [dose, ...good] })).not.toContain('name="tested"')
    expect(at({ readings: good })).toContain('name="tested"')
    expect(at({ readings: [dose, ...good.slice(1)] })).toContain('name="tested"')
  })
  it('cannot be ticked, with a word or without, while the newest test says otherwise', () => {
    const html = at({ readings: [dose, ...good, { ...first!, takenOn: '2026-12-03', ammoniaMgL: 4.5 }] })
    expect(text(html)).toContain('Not yet: the newest readings say otherwise. Ammonia reads 4.5 mg/L in the newest test.')
    expect(html).not.toContain('name="tested"')
    expect(html).not.toContain('name="done" value="1"')
    expect(html).toContain('<a class="btn main" href="#readings">Write down a new test</a>')
  })
  it('says so at the box where it was left empty', () => {
    const html = at({ readings: [], faults: [{ field: 'tested', message: 'Tick that you tested.' }] })
    expect(html).toContain('aria-describedby="tested-fault"')
    expect(html.match(/Tick that you tested\./g)).toHaveLength(2)
    expect(html).toContain('<a href="#tested" autofocus>Your word</a>: Tick that you tested.')
    expect(html).toContain('id="tested"')
  })
})

describe('a step that was done on another day', () => {
  const index = steps.findIndex((step) => step.id === 'run-in')
  const box = (html: string): string => /<details class="another-day"[^]*?<\/details>/.exec(html)?.[0] ?? ''
  it('asks for the day where somebody says so, from the step before to today, and without a word for today', () => {
    expect(box(page(3))).toMatch(/^<details class="another-day"><summary>It was another day<\/summary>/)
    expect(box(page(3))).toMatch(/name="doneOn" type="date" value=""[^>]* min="2026-11-01" max="2026-11-03"/)
    // Before the first water the start is no limit.
    expect(box(page(0))).not.toContain('min=')
    expect(box(page(0, { startedOn: '2026-11-09' }))).not.toContain('min=')
  })
  it('keeps the day and the word, and says there what is wrong with it', () => {
    const fault = { field: 'doneOn', message: 'That day is wrong.' }
    const html = page(index, { typed: { doneOn: '2026-11-01', tested: '1' }, faults: [fault] })
    expect(box(html)).toContain('<details class="another-day" open>')
    expect(box(html)).toContain('value="2026-11-01"')
    expect(html).toContain('name="tested" id="tested" value="1" checked')
    expect(html).toContain('<a href="#done-on" autofocus>Day on which it was done</a>: That day is wrong.')
    expect(html).toContain('<p class="fault" id="done-on-fault">That day is wrong.')
  })
  it('is judged by that day: run for two days today, not at all on the day of the fill', () => {
    expect(page(index)).not.toContain('name="tested"')
    expect(text(page(index, { typed: { doneOn: '2026-11-01' } }))).toContain('Filled and warmed on this very day')
  })
  it('tells a fault above where the form is not shown', () => {
    const [first] = setupProps(0).readings
    const ready = steps.findIndex((step) => step.id === 'ready')
    const html = page(ready, { readings: [{ ...first!, ammoniaMgL: 4 }], faults: [{ field: 'doneOn', message: 'That day is wrong.' }] })
    expect(html.match(/That day is wrong\./g)).toHaveLength(1)
    expect(html).not.toContain('href="#done-on"')
  })
})

it('tells a US reader pounds and inches first, on the screen and on paper', () => {
  const lift = text(page(steps.findIndex(({ id }) => id === 'lift-tank')))
  expect(lift).toContain('Two people from 44 lb (20 kg)')
  expect(lift).toContain('at most 1/8 in (3 mm)')
  expect(lift).not.toContain('20 kg (44 lb)')
  expect(text(page(3, { units: METRIC }))).toContain('20 kg (44 lb)')
})

it('a step passed on a word is told so under Done, on paper and in the count', () => {
  const { ticks } = setupProps(4)
  expect(text(page(4))).not.toContain('on your word')
  const html = page(4, { ticks: ticks.map((tick, index) => ({ ...tick, onWord: index === 1 })) })
  expect(html.match(/, on your word/g)).toHaveLength(2)
  expect(text(html)).toContain(`4 of ${steps.length} done, 1 on a word`)
})

it('a refusal is told first of all, in the title too, with a link to every place of a fault', () => {
  expect(page(4)).not.toContain('Nothing was stored')
  const names = ['takenOn', 'ammonia', 'nitrite', 'nitrate', 'ph', 'kh', 'temperature', 'note', 'on']
  const html = page(4, { faults: names.map((field) => ({ field, message: `${field} is wrong.` })) })
  expect(html).toMatch(/<title>Fault · /)
  expect(html.indexOf('Nothing was stored')).toBeLessThan(html.indexOf('class="progress"'))
  const [alert = ''] = /<div class="told stop faults" role="alert">[^]*?<\/div>/.exec(html) ?? []
  const places = [...alert.matchAll(/href="#([^"]+)"/g)].map(([, id]) => id)
  expect(places).toHaveLength(names.length)
  for (const id of places) expect(html).toContain(`id="${id}"`)
  expect(alert.match(/autofocus/g)).toHaveLength(1)
})

it('the start is offered no later than the first step that is done', () => {
  const leakTest = steps.findIndex(({ id }) => id === 'leak-fill') + 1
  expect(page(leakTest)).toMatch(/id="start-on"[^>]* max="2026-11-01"/)
  // What comes before the first water may be done before the start.
  expect(page(leakTest - 1)).not.toMatch(/id="start-on"[^>]* max=/)
})

describe('a leak hold that was ticked too soon', () => {
  const after = steps.findIndex((step) => step.id === 'leak-hold') + 1
  const ticks = (heldOn: string) =>
    steps.slice(0, after).map((step) => ({ stepId: step.id, on: step.id === 'leak-hold' ? heldOn : '2026-11-01' }))
  it('warns in one line while the tank is full, and blocks nothing', () => {
    const html = page(after, { ticks: ticks('2026-11-01'), today: '2026-11-01' })
    expect(html).toContain('Leave the tank full until Nov 2')
    expect(html).toContain(`<input type="hidden" name="step" value="drain">`)
    expect(page(after, { ticks: ticks('2026-11-01'), today: '2026-11-03' })).toContain('Look at the water line and the paper once more')
    expect(page(after, { ticks: ticks('2026-11-02') })).not.toContain('ticked too soon')
  })
  it('goes on warning at the head of the page once the tank is drained', () => {
    const drained = [...ticks('2026-11-01'), { stepId: 'drain', on: '2026-11-01' }]
    const [head = ''] = page(after + 1, { ticks: drained, today: '2026-11-01' }).split('<article')
    expect(head).toContain('Fill the tank and hold it again before anything goes into it.')
  })
})

describe('a step to read again or ahead', () => {
  it.each(['Done', 'Later'])('has all of its words under %s: how, caution, and when to stop', (heading) => {
    const html = page(12)
    const [list = ''] = html
      .split(`>${heading}</h2>`)
      .slice(1)
      .map((rest) => rest.split('</section>')[0])
    const listed = heading === 'Done' ? steps.slice(0, 12) : steps.slice(13)
    const said = text(list)
    for (const step of listed) {
      expect(said).toContain(sayPhrase(step.stopAndAsk, US).replaceAll("'", '&#39;'))
      if (step.caution !== null) expect(said).toContain(readerFirst(step.caution, US).replaceAll("'", '&#39;'))
    }
    expect(list.match(/<summary>/g)).toHaveLength(listed.length)
  })
})

describe('water tests', () => {
  it('are listed newest first as they were read', () => {
    const log = text(logIn(page(4)))
    expect(log).toContain(
      'Nov 8 Ammonia 1.5 mg/L Nitrite 0.25 mg/L Nitrate 5 mg/L pH 7.4 KH 4 dKH Temperature 77.4 °F water a little cloudy',
    )
    expect(log).toContain('Nov 6 Ammonia 2 mg/L Nitrite 0 mg/L pH 7.4 Temperature 77 °F Take this test out')
    expect(log.indexOf('Nov 8')).toBeLessThan(log.indexOf('Nov 6'))
  })
  it('of one day come with the one written down last first', () => {
    const [first] = setupProps(0).readings
    const twice = [first!, { ...first!, id: 'r3', note: 'a second look' }]
    const log = logIn(page(4, { readings: twice }))
    expect(log.indexOf('value="r3"')).toBeLessThan(log.indexOf('value="r1"'))
  })
  it('are taken out one at a time, with a word that confirms it', () => {
    const html = logIn(page(4))
    expect(html.match(/action="\/s\/token\/reading\/remove"/g)).toHaveLength(2)
    expect(html).toMatch(/name="reading" value="r1"><input type="hidden" name="confirm" value="1">/)
  })
  it('are on paper with their units, and lines to go on by hand', () => {
    const paper = text(page(4).split('<h2>Water tests</h2>')[1] ?? '')
    expect(paper).toContain('Nov 6 2 mg/L 0 mg/L 7.4 77 °F')
    expect(paper).toContain('temperature in °F')
    expect(page(4).match(/<tr><td><\/td>/g)).toHaveLength(16)
  })
  it('are of today at the latest', () => expect(page(4)).toMatch(/name="takenOn" type="date"[^>]* max="2026-11-03"/))
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
