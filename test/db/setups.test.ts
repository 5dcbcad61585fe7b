import { afterAll, beforeAll, expect, it } from 'vitest'
import type { Reading } from '../../core/quote/quote-view.ts'
import { answerQuote } from '../../db/quote-answer.ts'
import { addReading, removeReading } from '../../db/setup-readings.ts'
import { startSetup, tickStep } from '../../db/setup-progress.ts'
import { findLinkedSetup, listSetups } from '../../db/setups.ts'
import type { Viewer } from '../../db/viewer.ts'
import { testDatabase, type TestDatabase } from '../support/database.ts'
import { issued } from '../support/quote-rows.ts'
import { granted, person, phoneId } from '../support/rows.ts'

let test: TestDatabase
let advisor: Viewer
beforeAll(async () => {
  test = await testDatabase()
  advisor = await person(test.db, 'advisor')
})
afterAll(() => test.close())

async function setup(): Promise<{ quoteId: string; setupId: string }> {
  const made = await issued(test.db, advisor)
  return { quoteId: made.id, setupId: made.setup?.id ?? '' }
}

const reading = (fields: Partial<Reading> = {}): Reading => ({
  id: phoneId(),
  takenOn: '2026-11-20',
  ammoniaMgL: 0.25,
  nitriteMgL: null,
  nitrateMgL: 10,
  ph: 7.4,
  khDegrees: 5,
  temperatureC: 25.5,
  note: '',
  ...fields,
})

it('is for the suggested build until the customer accepts another', async () => {
  const { quoteId, setupId } = await setup()
  expect(await findLinkedSetup(test.db, setupId)).toMatchObject({
    letter: 'B',
    plan: { title: ['tank of build B'] },
    startedOn: null,
    ticks: [],
    readings: [],
  })
  const given = {
    revision: 1,
    answer: 'accepted',
    letter: 'A',
    note: '',
    at: new Date('2026-11-12T09:00:00Z'),
    today: '2026-11-12',
  } as const
  granted(await test.db.transaction().execute((trx) => answerQuote(trx, quoteId, given)))
  expect(await findLinkedSetup(test.db, setupId)).toMatchObject({ letter: 'A', plan: { title: ['tank of build A'] } })
})

it('keeps that a step was ticked on a word, and moves the step before to the day that the word names', async () => {
  const { setupId } = await setup()
  const word = { late: { stepId: 'leak-test', on: '2026-11-13' } }
  granted(await tickStep(test.db, setupId, 'leak-test', true, '2026-11-14'))
  granted(await tickStep(test.db, setupId, 'level', true, '2026-11-14', word))
  expect((await findLinkedSetup(test.db, setupId))?.ticks).toEqual([
    { stepId: 'leak-test', on: '2026-11-13', onWord: false },
    { stepId: 'level', on: '2026-11-14', onWord: true },
  ])
})

it('keeps the day a step was first ticked, and takes a tick back', async () => {
  const { setupId } = await setup()
  granted(await startSetup(test.db, setupId, '2026-11-14'))
  granted(await tickStep(test.db, setupId, 'level', true, '2026-11-14'))
  granted(await tickStep(test.db, setupId, 'level', true, '2026-11-15'))
  expect(await findLinkedSetup(test.db, setupId)).toMatchObject({ startedOn: '2026-11-14', ticks: [{ stepId: 'level', on: '2026-11-14' }] })
  granted(await tickStep(test.db, setupId, 'level', false, '2026-11-15'))
  expect((await findLinkedSetup(test.db, setupId))?.ticks).toEqual([])
  expect(await tickStep(test.db, setupId, 'fly', true, '2026-11-15')).toMatchObject({ ok: false, refusal: { code: 'step_unknown' } })
  expect(await tickStep(test.db, 'no-id', 'level', true, '2026-11-15')).toMatchObject({ ok: false, refusal: { code: 'not_found' } })
})

it('takes a reading once, whatever a phone repeats', async () => {
  const { setupId } = await setup()
  const first = reading()
  expect(granted(await addReading(test.db, setupId, first))).toEqual({ reading: first, repeated: false })
  expect(granted(await addReading(test.db, setupId, first))).toEqual({ reading: first, repeated: true })
  expect(await addReading(test.db, setupId, { ...first, ph: 7 })).toMatchObject({ ok: false, refusal: { code: 'id_taken' } })
  const elsewhere = await setup()
  expect(await addReading(test.db, elsewhere.setupId, first)).toMatchObject({ ok: false, refusal: { code: 'id_taken' } })
  granted(await addReading(test.db, setupId, reading({ takenOn: '2026-11-18' })))
  expect((await findLinkedSetup(test.db, setupId))?.readings.map((one) => one.takenOn)).toEqual(['2026-11-18', '2026-11-20'])
})

it('holds 500 readings and refuses one more in words, however many come at once; a repeat is still answered', async () => {
  const { setupId } = await setup()
  const rows = Array.from({ length: 495 }, () => ({ id: phoneId(), setup_id: setupId, taken_on: '2026-11-19', note: '' }))
  await test.db.insertInto('setup_reading').values(rows).execute()
  const sent = Array.from({ length: 12 }, () => reading())
  const answers = await Promise.all(sent.map((one) => addReading(test.db, setupId, one)))
  expect(answers.filter((answer) => answer.ok)).toHaveLength(5)
  expect(answers.find((answer) => !answer.ok)).toMatchObject({
    refusal: { code: 'full', message: expect.stringContaining('500 readings') },
  })
  const kept = sent[answers.findIndex((answer) => answer.ok)] ?? reading()
  expect(granted(await addReading(test.db, setupId, kept)).repeated).toBe(true)
  expect((await findLinkedSetup(test.db, setupId))?.readings).toHaveLength(500)
})

it('has no more ticks than steps, whatever is sent', async () => {
  const { setupId } = await setup()
  const names = Array.from({ length: 30 }, (_, index) => ['level', 'leak-test', `made-up-${index}`][index % 3] ?? '')
  await Promise.all(names.map((name) => tickStep(test.db, setupId, name, true, '2026-11-16')))
  expect(await test.db.selectFrom('setup_tick').select('step_id').where('setup_id', '=', setupId).execute()).toHaveLength(2)
})

it('is listed to advisors once its quote is accepted or it is used', async () => {
  const { setupId } = await setup()
  const listed = async (viewer: Viewer) => (await listSetups(test.db, viewer)).find((row) => row.id === setupId)
  expect(await listed(advisor)).toBeUndefined()
  granted(await tickStep(test.db, setupId, 'leak-test', true, '2026-11-16'))
  expect(await listed(advisor)).toMatchObject({
    letter: 'B',
    stepCount: 2,
    linkVersion: 1,
    ticks: [{ stepId: 'leak-test', on: '2026-11-16', onWord: false }],
  })
  expect(await listed(await person(test.db))).toBeUndefined()
})

it('takes a reading out for good, and only out of its own setup', async () => {
  const [{ setupId }, elsewhere] = [await setup(), await setup()]
  const first = reading()
  granted(await addReading(test.db, setupId, first))
  expect(await removeReading(test.db, elsewhere.setupId, first.id)).toMatchObject({ ok: false, refusal: { code: 'not_found' } })
  expect(await removeReading(test.db, setupId, 'no-id')).toMatchObject({ ok: false, refusal: { code: 'not_found' } })
  granted(await removeReading(test.db, setupId, first.id))
  expect((await findLinkedSetup(test.db, setupId))?.readings).toEqual([])
  expect(await removeReading(test.db, setupId, first.id)).toMatchObject({ ok: false, refusal: { code: 'not_found' } })
})
