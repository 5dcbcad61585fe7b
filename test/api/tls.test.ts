import { copyFile, mkdtemp, rm, writeFile } from 'node:fs/promises'
import { request } from 'node:https'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { TLSSocket } from 'node:tls'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { certificateWarning, followCertificate, readCertificate, type Certificate } from '../../api/service/certificate.ts'
import { readConfig } from '../../api/config.ts'
import { freePort, startServer, until, type ServerProcess } from './support/process.ts'

/** Two pairs made for these tests alone, for localhost and tanks.example.org, a hundred years long. */
const fixture = (name: string): string => fileURLToPath(new URL(`../fixtures/tls/${name}`, import.meta.url))
const FIRST = { certPath: fixture('first.crt'), keyPath: fixture('first.key') }
const RENEWED = { certPath: fixture('renewed.crt'), keyPath: fixture('renewed.key') }

let folder: string
const running: ServerProcess[] = []
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'driploop-tls-'))
})
afterEach(async () => {
  for (const server of running.splice(0)) {
    server.child.kill('SIGKILL')
    await server.exited
  }
})
afterAll(() => rm(folder, { recursive: true, force: true }))

/** Status, header and the name on the certificate that one request is answered with. */
const ask = (port: number): Promise<{ status: number; hsts: unknown; name: string }> =>
  new Promise((resolve, reject) => {
    const asked = request({ port, host: '127.0.0.1', path: '/health/live', rejectUnauthorized: false, agent: false }, (answer) => {
      const name = String((answer.socket as TLSSocket).getPeerCertificate().subject.CN)
      answer.resume().on('end', () => resolve({ status: answer.statusCode ?? 0, hsts: answer.headers['strict-transport-security'], name }))
    })
    asked.on('error', reject)
    asked.end()
  })

it('speaks https with a certificate of its own, and says so to browsers', async () => {
  const port = await freePort()
  const server = startServer({
    PORT: String(port),
    DATA_DIR: join(folder, 'data'),
    PUBLIC_URL: `https://localhost:${port}`,
    TLS_CERT: FIRST.certPath,
    TLS_KEY: FIRST.keyPath,
  })
  running.push(server)
  await until(server, 'https', async () => (await ask(port)).status === 200)
  expect(await ask(port)).toEqual({ status: 200, hsts: 'max-age=31536000', name: 'first' })
  await expect(fetch(`http://localhost:${port}/health/live`)).rejects.toThrow()
})

describe('a pair that cannot be right', () => {
  it.each([
    ['missing', { ...FIRST, certPath: '/no/such/file' }, 'TLS_CERT is "/no/such/file": there is no such file.'],
    ['a folder', { ...FIRST, keyPath: tmpdir() }, 'the file cannot be read'],
    ['no certificate', { ...FIRST, certPath: FIRST.keyPath }, 'holds no certificate in PEM form'],
    ['no key', { ...FIRST, keyPath: FIRST.certPath }, 'holds no key in PEM form'],
    ['of two pairs', { ...FIRST, keyPath: RENEWED.keyPath }, 'is not the key of the certificate'],
  ])('is told in a sentence: %s', async (_name, files, words) => {
    await expect(readCertificate(files)).rejects.toThrow(words)
  })

  it('is told at the start where one of the two is not set, or no https address is', () => {
    expect(() => readConfig({ TLS_CERT: 'a.crt', PUBLIC_URL: 'https://tanks.example.org' })).toThrow('TLS_CERT and TLS_KEY belong together')
    expect(() => readConfig({ TLS_CERT: 'a.crt', TLS_KEY: 'a.key' })).toThrow('Set PUBLIC_URL')
  })
})

it('warns of a certificate for another host, and of one that has ended', async () => {
  const own = await readCertificate(FIRST)
  expect(certificateWarning(own, 'tanks.example.org', Date.now())).toBeNull()
  expect(certificateWarning(own, 'reef.example.org', Date.now())).toContain('is not for reef.example.org')
  expect(certificateWarning(own, 'localhost', Date.parse('2300-01-01'))).toContain('ended on')
})

it('takes up a renewed pair, and nothing while only half of it is there', async () => {
  const files = { certPath: join(folder, 'live.crt'), keyPath: join(folder, 'live.key') }
  await copyFile(FIRST.certPath, files.certPath)
  await copyFile(FIRST.keyPath, files.keyPath)
  const taken: Certificate[] = []
  const faults: unknown[] = []
  const unfollow = followCertificate(
    files,
    await readCertificate(files),
    { take: (one) => taken.push(one), onFault: (error) => faults.push(error) },
    5,
  )
  const told = async (what: () => boolean): Promise<void> => {
    while (!what()) await new Promise((resolve) => setTimeout(resolve, 5))
  }
  await copyFile(RENEWED.certPath, files.certPath)
  await told(() => faults.length > 0)
  expect(taken).toEqual([])
  await copyFile(RENEWED.keyPath, files.keyPath)
  await told(() => taken.length > 0)
  expect(taken[0]).toEqual(await readCertificate(RENEWED))
  await writeFile(files.keyPath, '')
  unfollow()
})
