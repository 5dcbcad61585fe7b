/** A browser that knows no idle time (Safari) gets this after the first screen instead; the screen's own reading is done by then. */
const LATER_MS = 1500
/** A busy page is not waited for longer than this: the aisle without a signal may be a minute away. */
const AT_LATEST_MS = 5000

/** Runs once the page has nothing better to do. Gives the way to call it off. */
export function whenIdle(run: () => void): () => void {
  if (typeof requestIdleCallback !== 'function') {
    const timer = setTimeout(run, LATER_MS)
    return () => clearTimeout(timer)
  }
  const asked = requestIdleCallback(run, { timeout: AT_LATEST_MS })
  return () => cancelIdleCallback(asked)
}
