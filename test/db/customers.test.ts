import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { OwnedLine } from '../../core/quote/draft.ts'
import { createCustomer, eraseCustomer, findCustomer, updateCustomer } from '../../db/customers.ts'
import type { Viewer } from '../../db/viewer.ts'
import { testDatabase, type TestDatabase } from '../support/database.ts'
import { granted, person } from '../support/rows.ts'

let test: TestDatabase
let advisor: Viewer
let manager: Viewer
const heater: OwnedLine = {
  id: 'h',
  answer: 'owned',
  slot: 'heat',
  productId: null,
  description: 'old 150 W heater',
  quantity: 1,
  spec: null,
}

beforeAll(async () => {
  test = await testDatabase()
  advisor = await person(test.db, 'advisor')
  manager = await person(test.db, 'manager')
})
afterAll(() => test.close())

const added = async () =>
  granted(await createCustomer(test.db, advisor, { name: 'Ola Brandt', reach: 'ola@example.test', note: 'has a cat' }))

describe('a customer’s gear', () => {
  it('is kept with the customer, and stays where a change does not speak of it', async () => {
    const made = await added()
    expect(made.gear).toEqual([])
    const kept = granted(await updateCustomer(test.db, advisor, made.id, made.version, { ...made, gear: [heater] }))
    expect(kept.gear).toEqual([heater])
    const renamed = granted(await updateCustomer(test.db, advisor, made.id, kept.version, { name: 'Ola B', reach: '', note: '' }))
    expect(renamed).toMatchObject({ name: 'Ola B', gear: [heater] })
  })
})

describe('erasing a customer', () => {
  const erase = (viewer: Viewer, id: string, version: number) =>
    test.db.transaction().execute((trx) => eraseCustomer(trx, viewer, id, version, '2026-11-26'))

  it('leaves no name, reach, note or gear, and the day on which it was done', async () => {
    const made = await added()
    const kept = granted(await updateCustomer(test.db, advisor, made.id, made.version, { ...made, gear: [heater] }))
    granted(await erase(manager, made.id, kept.version))
    expect(await findCustomer(test.db, advisor, made.id)).toMatchObject({
      name: 'erased',
      reach: '',
      note: '',
      gear: [],
      erasedOn: '2026-11-26',
    })
  })

  it('is a manager’s, of the version that was looked at, and once', async () => {
    const made = await added()
    expect((await erase(advisor, made.id, made.version)).ok).toBe(false)
    expect(await erase(manager, made.id, made.version + 1)).toMatchObject({ ok: false, refusal: { code: 'stale' } })
    const gone = granted(await erase(manager, made.id, made.version))
    expect(await erase(manager, made.id, gone.version)).toMatchObject({ ok: false, refusal: { code: 'closed' } })
    expect((await updateCustomer(test.db, advisor, made.id, gone.version, { name: 'Ola', reach: '', note: '' })).ok).toBe(false)
  })
})
