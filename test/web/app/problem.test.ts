import { describe, expect, it } from 'vitest'
import { faultsByField, faultsOf, fieldKey, problemOf, ProblemError, readProblem } from '../../../web/app/client/problem.ts'
import { queryOf } from '../../../web/app/client/request.ts'

describe('a problem document', () => {
  it('is told in the server’s own words', () => {
    const problem = readProblem(409, {
      type: 'https://driploop.invalid/problems/already-answered',
      title: 'Already answered',
      status: 409,
      detail: 'Accepted on Oct 22.',
      errors: [],
    })
    expect(problem).toEqual({ status: 409, code: 'already-answered', title: 'Already answered', detail: 'Accepted on Oct 22.', errors: [] })
  })
  it.each([0, 401, 403, 404, 412, 422, 429, 500, 503])('has words of its own where status %i comes without any', (status) => {
    const problem = readProblem(status, '<html>')
    expect(problem.title.length).toBeGreaterThan(5)
    expect(problem.title).not.toMatch(/undefined|\d{3}/)
  })
  it('keeps only errors that say something', () => {
    const errors = [
      { field: 'name', message: 'Name is empty.', limit: '1' },
      { field: 'x' },
      'text',
      null,
      { message: 'The whole is wrong.' },
    ]
    expect(readProblem(422, { errors }).errors).toEqual([
      { field: 'name', message: 'Name is empty.', limit: '1' },
      { field: '', message: 'The whole is wrong.' },
    ])
  })
  it.each([
    ['spec.lengthMm', 'spec.lengthMm'],
    ['/spec/lengthMm', 'spec.lengthMm'],
    ['parts[0].quantity', 'parts.0.quantity'],
    ['body.name', 'name'],
  ])('names the field %s as a form does', (field, key) => {
    expect(fieldKey(field)).toBe(key)
  })
  it('puts the first fault beside its field', () => {
    const errors = [
      { field: 'name', message: 'first' },
      { field: 'name', message: 'second' },
    ]
    expect(faultsByField({ errors })).toEqual({ name: 'first' })
  })
  it('is found inside what was thrown; a failed fetch is a server that was not reached', () => {
    expect(problemOf(new ProblemError(readProblem(412, null))).status).toBe(412)
    expect(problemOf(new TypeError('Failed to fetch')).status).toBe(0)
    expect(problemOf(new RangeError('oops')).code).toBe('page_fault')
    expect(faultsOf(null)).toEqual({})
  })
})

it('a query string holds what is stated and nothing else', () => {
  expect(queryOf({ kind: 'tank', q: '', storeId: undefined, limit: 0, archived: false })).toBe('?kind=tank&limit=0&archived=false')
  expect(queryOf({ q: 'a&b=c' })).toBe('?q=a%26b%3Dc')
  expect(queryOf({})).toBe('')
})
