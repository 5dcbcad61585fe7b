import { ProblemError, readProblem } from '../client/problem.ts'

/** How the browsers and the bundler name a part of the page that did not come. */
const NOT_LOADED = /dynamically imported module|importing a module script failed|unable to preload css|failed to load module script/i

/** Whether a part of the page did not come, as opposed to one that came and failed. */
export const isPartNotLoaded = (error: unknown): boolean => error instanceof Error && NOT_LOADED.test(error.message)

/** Any answer will do: it tells a page that was renewed since it was opened from a phone without a signal. */
async function serverAnswers(): Promise<boolean> {
  try {
    return (await fetch('/health/live', { cache: 'no-store' })).ok
  } catch {
    return false
  }
}

/**
 * A part of the page that comes when it is first needed.
 *
 * Errors: the server does not answer: a problem with status 0, which a screen tells as "No signal" and may try again. It answers, but has that
 * part no longer: the error that makes the router read the whole page anew, once.
 */
export async function loadPart<Part>(load: () => Promise<Part>, answers: () => Promise<boolean> = serverAnswers): Promise<Part> {
  try {
    return await load()
  } catch (error) {
    if (!isPartNotLoaded(error)) throw error
    if (!(await answers())) throw new ProblemError(readProblem(0, null))
    throw new TypeError('Failed to fetch dynamically imported module', { cause: error })
  }
}
