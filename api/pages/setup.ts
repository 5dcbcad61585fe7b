import { Hono } from 'hono'
import { isCivilDate } from '../../core/dates.ts'
import { startSetup, tickStep } from '../../db/setup-progress.ts'
import { setupDrawing } from '../../db/setup-drawing.ts'
import { addReading, removeReading } from '../../db/setup-readings.ts'
import { linkGonePage } from '../../web/pages/link-gone-page.ts'
import type { PageFault } from '../../web/pages/page-fault.ts'
import { setupPage } from '../../web/pages/setup-page.ts'
import type { Ctx, Env } from '../context.ts'
import { keepPrivate, pagePolicy, setPolicy } from '../http/headers.ts'
import { operation } from '../http/operation.ts'
import type { OpenedSetup } from '../setup-links/open.ts'
import { readingDayFault, startDayFault } from '../setup-links/days.ts'
import { givenWord, openSetupLink, tickFault } from '../setup-links/open.ts'
import { formOf } from './form.ts'
import { readingIdOf, readReadingForm } from './reading-form.ts'

const page = { tag: 'Pages', hide: true, answers: { 200: 'text/html' } }
const SENT_BEFORE =
  'This form was sent before with other figures, and those are stored: see the log. Send it again to add these as another test.'
const UNCONFIRMED = 'Nothing was taken out. Open the test in the log, and press the button that says yes.'
const WRITE_DAY = 'Write the day like 2026-10-20.'
type Found = Extract<OpenedSetup, { found: true }>

function gonePage(c: Ctx, opened: Extract<OpenedSetup, { found: false }>) {
  return c.html(linkGonePage({ what: 'setup', installName: opened.install.name, contact: opened.install.contact }), opened.gone ? 410 : 404)
}

async function show(c: Ctx, { setup, install, today }: Found, token: string, faults: PageFault[] = [], typed: Record<string, string> = {}) {
  const { plan, startedOn, ticks, readings } = setup
  const { dripLoop, tank } = await setupDrawing(c.get('db'), setup.id)
  const props = {
    plan,
    quoteWithdrawn: setup.quoteWithdrawn,
    units: setup.units,
    contact: install.contact,
    startedOn,
    ticks,
    readings,
    dripLoop,
    tank,
    today,
    written: c.req.query('written') ?? '',
    path: `/s/${token}`,
    readingId: readingIdOf(typed),
    faults,
    typed,
  }
  return c.html(setupPage(props), faults.length === 0 ? 200 : 422)
}

function begin(c: Ctx): string {
  keepPrivate(c)
  setPolicy(c, pagePolicy())
  return c.req.param('token') ?? ''
}

/** The checklist on a phone, without script: each form posts, stores and comes back to the page. */
export const setupPages = new Hono<Env>()
  .get('/:token', operation('showSetupPage', { ...page, summary: 'A setup, for whoever holds its link' }), async (c) => {
    const token = begin(c)
    const opened = await openSetupLink(c, token)
    return opened.found ? show(c, opened, token) : gonePage(c, opened)
  })
  .post('/:token/tick', operation('tickOnSetupPage', { ...page, summary: 'Tick a step from its form' }), async (c) => {
    const token = begin(c)
    const opened = await openSetupLink(c, token)
    if (!opened.found) return gonePage(c, opened)
    const form = await formOf(c)
    const { step = '', done, doneOn = '' } = form
    if (doneOn !== '' && !isCivilDate(doneOn)) return show(c, opened, token, [{ field: 'doneOn', message: WRITE_DAY }], form)
    const tick = { stepId: step, on: doneOn === '' ? opened.today : doneOn, tested: form['tested'] === '1' }
    const fault = done === '1' ? tickFault(tick, opened) : null
    if (fault !== null) return show(c, opened, token, [{ field: fault.field === 'on' ? 'doneOn' : 'tested', message: fault.message }], form)
    const ticked = await tickStep(c.get('db'), opened.setup.id, step, done === '1', tick.on, givenWord(tick, opened))
    if (!ticked.ok) return show(c, opened, token, [{ field: 'step', message: ticked.refusal.message }])
    // A step that is done leads to the next one, at the top; one taken back is shown where it stands now.
    return c.redirect(done === '1' ? `/s/${token}` : `/s/${token}#${encodeURIComponent(step)}`, 303)
  })
  .post('/:token/reading', operation('addReadingOnSetupPage', { ...page, summary: 'A water test from its form' }), async (c) => {
    const token = begin(c)
    const opened = await openSetupLink(c, token)
    if (!opened.found) return gonePage(c, opened)
    const form = await formOf(c)
    const read = readReadingForm(form, opened.setup.units)
    if ('faults' in read) return show(c, opened, token, read.faults, form)
    const fault = readingDayFault(read.reading.takenOn, opened)
    if (fault !== null) return show(c, opened, token, [{ field: 'takenOn', message: fault }], form)
    const added = await addReading(c.get('db'), opened.setup.id, read.reading)
    if (added.ok) return c.redirect(`/s/${token}?written=${added.value.reading.id}#readings`, 303)
    if (added.refusal.code !== 'id_taken') return show(c, opened, token, [{ field: '', message: added.refusal.message }], form)
    // A page come back to and changed: what it says now is another test, and the form gets an id of its own.
    const { id: _sent, ...typed } = form
    return show(c, opened, token, [{ field: '', message: SENT_BEFORE }], typed)
  })
  .post('/:token/reading/remove', operation('removeReadingOnSetupPage', { ...page, summary: 'Take a water test out' }), async (c) => {
    const token = begin(c)
    const opened = await openSetupLink(c, token)
    if (!opened.found) return gonePage(c, opened)
    const { reading = '', confirm } = await formOf(c)
    if (confirm !== '1') return show(c, opened, token, [{ field: 'reading', message: UNCONFIRMED }])
    // One that is gone already is what was asked for.
    await removeReading(c.get('db'), opened.setup.id, reading)
    return c.redirect(`/s/${token}#readings`, 303)
  })
  .post('/:token/start', operation('startOnSetupPage', { ...page, summary: 'The day the setup starts' }), async (c) => {
    const token = begin(c)
    const opened = await openSetupLink(c, token)
    if (!opened.found) return gonePage(c, opened)
    const form = await formOf(c)
    const on = form['on'] ?? opened.today
    if (!isCivilDate(on)) return show(c, opened, token, [{ field: 'on', message: WRITE_DAY }], form)
    const fault = startDayFault(on, opened)
    if (fault !== null) return show(c, opened, token, [{ field: 'on', message: fault }], form)
    const started = await startSetup(c.get('db'), opened.setup.id, on)
    return started.ok ? c.redirect(`/s/${token}`, 303) : gonePage(c, { found: false, gone: false, install: opened.install })
  })
