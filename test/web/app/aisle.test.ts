import { QueryClient } from '@tanstack/react-query'
import { describe, expect, it } from 'vitest'
import { problemOf, ProblemError } from '../../../web/app/client/problem.ts'
import { byName } from '../../../web/app/parts/by-name.ts'
import { loadPart } from '../../../web/app/parts/load-part.ts'
import { offeredProducts } from '../../../web/app/post/known-products.ts'
import { rowsInMemory } from '../../../web/app/prices/board-in-memory.ts'
import { boardRow } from './sample-board.ts'

const lost = (message: string) => () => Promise.reject(new TypeError(message))
const CHROMIUM = 'Failed to fetch dynamically imported module: http://localhost/assets/prices.js'

describe('a part of the page that does not come', () => {
  it.each([
    CHROMIUM,
    'error loading dynamically imported module',
    'Importing a module script failed.',
    'Unable to preload CSS for /assets/prices.css',
  ])('is "not reached" without a signal: %s', async (message) => {
    const error = await loadPart(lost(message), async () => false).catch((thrown: unknown) => thrown)
    expect(error).toBeInstanceOf(ProblemError)
    expect(problemOf(error)).toMatchObject({ status: 0, title: 'The server was not reached' })
  })
  it('makes the router load the page anew where the server answers: it was renewed since', async () => {
    await expect(loadPart(lost('Unable to preload CSS for /assets/prices.css'), async () => true)).rejects.toThrow(
      /^Failed to fetch dynamically imported module/,
    )
  })
  it('is handed on when it comes, and a mistake inside it stays one', async () => {
    expect(await loadPart(async () => 'screen', async () => false)).toBe('screen') // prettier-ignore
    await expect(loadPart(lost('x is not a function'), async () => false)).rejects.toThrow('x is not a function')
    expect(problemOf(new TypeError('x is not a function')).code).toBe('page_fault')
    expect(problemOf(new TypeError('Failed to fetch')).status).toBe(0)
  })
})

describe('which products are offered', () => {
  const recent = [{ id: 'p', name: 'Pellick C-1800', kind: 'filter' }] as const
  const board = ['p', 'a', 'b', 'a', 'c'].map((productId) => boardRow({ productId, productName: productId }))
  it('one’s own recent ones first, filled up with the newest of the board, each once', () => {
    expect(offeredProducts(recent, board, 3).map(({ id, name }) => [id, name])).toEqual([
      ['p', 'Pellick C-1800'],
      ['a', 'a'],
      ['b', 'b'],
    ])
    expect(offeredProducts([], board, 6)).toHaveLength(4)
  })
  it('every board that was read is at hand', () => {
    const queries = new QueryClient()
    queries.setQueryData(['board', {}, 40], { rows: board, total: 5 })
    queries.setQueryData(['board', { q: 'x' }, 40], { rows: [], total: 0 })
    expect(rowsInMemory(queries)).toEqual(board)
  })
})

it('names are sorted as a person does: 30 before 100', () => {
  const names = ['Strand 100', 'Strand 30', 'strand 120', 'Row 24'].map((name) => ({ name }))
  expect(names.toSorted(byName).map(({ name }) => name)).toEqual(['Row 24', 'Strand 30', 'Strand 100', 'strand 120'])
})
