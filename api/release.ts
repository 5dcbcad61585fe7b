import { readFileSync } from 'node:fs'

/** This release, as package.json counts it. @example RELEASE // '0.1.0' */
export const RELEASE: string = (JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8')) as { version: string })
  .version
