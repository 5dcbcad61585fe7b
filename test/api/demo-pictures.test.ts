import { afterAll, beforeAll, expect, it } from 'vitest'
import { drawDemoPictures } from '../../api/demo/demo-pictures.ts'
import { pictureTypeOf } from '../../core/catalog/picture.ts'
import { CLUB } from '../../db/demo/club.ts'
import { productId } from '../../db/demo/product-entry.ts'
import { DEMO_SEED, seedDemo } from '../../db/demo/seed-demo.ts'
import { findPicture, findPictureBytes } from '../../db/pictures.ts'
import { civilDateAt } from '../../core/dates.ts'
import { testDatabase, type TestDatabase } from '../support/database.ts'

let test: TestDatabase
beforeAll(async () => {
  test = await testDatabase()
  const today = civilDateAt(Date.now(), CLUB.timeZone)
  const passwords = { member: 'm', advisor: 'a', manager: 'c' }
  await seedDemo(test.db, { seed: DEMO_SEED, today, passwords, hash: async (password) => password })
})
afterAll(() => test.close())

it('some products of the demo have a picture of ours, each another one, and the others none', async () => {
  await drawDemoPictures(test.db)
  const hashes = []
  for (const name of ['Wendlemere 40 breeder', 'Thornby Frame 36', 'Halden Row 36']) {
    const picture = await findPicture(test.db, productId(name))
    expect(picture, name).toMatchObject({ width: 600, height: 450, version: 1 })
    const hash = picture?.hash ?? ''
    hashes.push(hash)
    const small = await findPictureBytes(test.db, hash, 'small')
    expect(small && pictureTypeOf(small)).toBe('image/webp')
  }
  expect(new Set(hashes).size).toBe(3)
  expect(await findPicture(test.db, productId('Wendlemere 20 long'))).toMatchObject({ hash: null, version: 0 })
})
