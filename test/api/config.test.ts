import { expect, it } from 'vitest'
import { configWarning, readConfig } from '../../api/config.ts'

const warned = (env: Record<string, string>) => configWarning(readConfig(env))

it('warns where other computers reach the service and cannot sign in', () => {
  for (const HOST of ['0.0.0.0', '::', '192.0.2.7']) expect(warned({ HOST })).toContain(`HOST is ${HOST} and PUBLIC_URL is missing`)
})

it('is silent on this computer alone, and where the https address is stated', () => {
  for (const HOST of ['127.0.0.1', '127.0.0.2', '::1', 'localhost']) expect(warned({ HOST })).toBeNull()
  expect(warned({})).toBeNull()
  expect(warned({ HOST: '0.0.0.0', PUBLIC_URL: 'https://tanks.example.org' })).toBeNull()
})
