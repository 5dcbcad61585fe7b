import { existsSync } from 'node:fs'

const PLACES = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/Applications/Chromium.app/Contents/MacOS/Chromium']

/** Start options that keep a test browser from calling anything but the server under test. */
export const CHROMIUM_FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

/** A Chromium on this machine: `CHROME_PATH`, else where distributions put it; undefined where there is none. */
export function chromiumPath(): string | undefined {
  const named = process.env['CHROME_PATH']
  if (named !== undefined && named !== '') return existsSync(named) ? named : undefined
  return PLACES.find((path) => existsSync(path))
}
