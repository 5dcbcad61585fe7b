import { expect, it } from 'vitest'
import { sayBytes, sayEvery, sayMoment } from '../../../web/app/backups/backup-words.ts'
import { isPlainHttp } from '../../../web/app/parts/plain-http.tsx'

it.each([
  [0, '0 bytes'],
  [999, '999 bytes'],
  [387_609, '388 kB'],
  [999_700, '1.0 MB'],
  [12_340_000, '12.3 MB'],
  [123_400_000, '123 MB'],
  [5e12, '5000 GB'],
])('tells %s bytes as %s', (bytes, words) => {
  expect(sayBytes(bytes)).toBe(words)
})

it('tells a moment by the clock of the place', () => {
  expect(sayMoment('2026-11-26T03:43:15Z', 'America/Detroit')).toBe('Nov\u00a025, 22:43')
  expect([sayEvery(15), sayEvery(1440)]).toEqual(['every 15 minutes', 'once a day'])
})

it.each([
  ['http:', 'tanks.example.org', true],
  ['http:', '192.0.2.7', true],
  ['http:', 'localhost.example.org', true],
  ['http:', 'localhost', false],
  ['http:', '127.0.0.1', false],
  ['http:', '[::1]', false],
  ['http:', 'club.localhost', false],
  ['https:', 'tanks.example.org', false],
])('warns of %s//%s: %s', (protocol, hostname, warned) => {
  expect(isPlainHttp({ protocol, hostname })).toBe(warned)
})
