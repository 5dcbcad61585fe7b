import { afterEach, describe, expect, it, vi } from 'vitest'
import { ProblemError } from '../../../web/app/client/problem.ts'
import { getPaper } from '../../../web/app/client/paper.ts'

afterEach(() => vi.unstubAllGlobals())

const busy = (seconds = '5'): Response =>
  Response.json({ title: 'Busy', detail: 'Too many documents.' }, { status: 503, headers: { 'retry-after': seconds } })
const paper = (): Response => new Response('%PDF-1.7', { headers: { 'content-disposition': 'attachment; filename="quote-2026-0001.pdf"' } })

/** Answers one after the other; the waits in between. */
async function ask(...answers: Array<Response | Error>) {
  const waits: number[] = []
  const calls = vi.fn(async () => {
    const next = answers.shift()
    if (next === undefined || next instanceof Error) throw next ?? new Error('nothing more was to be asked')
    return next
  })
  vi.stubGlobal('fetch', calls)
  const outcome = await getPaper('/paper', async (ms) => void waits.push(ms)).catch((error: unknown) => error)
  return { outcome, waits, asked: calls.mock.calls.length }
}

describe('a document on paper', () => {
  it('comes at once under the name the server gives it', async () => {
    const { outcome, waits } = await ask(paper())
    expect(outcome).toMatchObject({ name: 'quote-2026-0001.pdf', bytes: { size: 8 } })
    expect(waits).toEqual([])
  })
  it('is asked for once more where many are being made, after the time the server says', async () => {
    const { outcome, waits } = await ask(busy(), paper())
    expect([waits, (outcome as { name: string }).name]).toEqual([[5000], 'quote-2026-0001.pdf'])
  })
  it.each([
    ['twice too many', [busy(), busy()], 2, 503],
    ['too long a wait', [busy('600')], 1, 503],
    ['a refusal', [Response.json({ title: 'Nothing here' }, { status: 404 })], 1, 404],
    ['no server', [new TypeError('failed to fetch')], 1, 0],
  ] as const)('is refused in words after %s', async (_case, answers, times, status) => {
    const { outcome, asked } = await ask(...answers)
    expect(outcome).toBeInstanceOf(ProblemError)
    expect([(outcome as ProblemError).problem.status, asked]).toEqual([status, times])
  })
})
