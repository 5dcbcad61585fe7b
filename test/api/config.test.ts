import { join } from 'node:path'
import { expect, it } from 'vitest'
import { configWarning, readConfig } from '../../api/config.ts'
import { DEMO_FOLDER, demoConfig } from '../../api/demo/demo-config.ts'

const warned = (env: Record<string, string>) => configWarning(readConfig(env))

it('warns where other computers reach the service and cannot sign in', () => {
  for (const HOST of ['0.0.0.0', '::', '192.0.2.7']) expect(warned({ HOST })).toContain(`HOST is ${HOST} and PUBLIC_URL is missing`)
})

it('is silent on this computer alone, and where the https address is stated', () => {
  for (const HOST of ['127.0.0.1', '127.0.0.2', '::1', 'localhost']) expect(warned({ HOST })).toBeNull()
  expect(warned({})).toBeNull()
  expect(warned({ HOST: '0.0.0.0', PUBLIC_URL: 'https://tanks.example.org' })).toBeNull()
})

it.each([
  ['PUBLICURL', 'PUBLIC_URL'],
  ['DATABASE_ULR', 'DATABASE_URL'],
  ['DATABASE_URI', 'DATABASE_URL'],
  ['Trusted_Proxys', 'TRUSTED_PROXIES'],
  ['BACKUPDIR', 'BACKUP_DIR'],
  ['data_dir', 'DATA_DIR'],
  ['DATA_DIRR', 'DATA_DIR'],
  ['TLSCERT', 'TLS_CERT'],
])('refuses %s, and asks whether %s was meant', (name, meant) => {
  expect(() => readConfig({ [name]: 'x' })).toThrow(`${name} is not known. Was ${meant} meant?`)
})

it('lets alone what belongs to somebody else', () => {
  const theirs = [
    'HOSTNAME',
    'PORTS',
    'POST',
    'PATH',
    'XDG_DATA_DIRS',
    'PGDATA',
    'DATABASE_NAME',
    'PUBLIC_IP',
    'NODE_ENV',
    'npm_config_cache',
    'KEY',
    'TLS_CA',
  ]
  expect(readConfig(Object.fromEntries(theirs.map((name) => [name, 'x']))).port).toBe(8080)
})

it('refuses a passphrase that is too short to lock a file', () => {
  expect(() => readConfig({ BACKUP_PASSPHRASE: 'short' })).toThrow('BACKUP_PASSPHRASE has 5 characters')
})

it('keeps the backups of the demo in its own folder, away from those of the real service', () => {
  const demo = demoConfig('8123')
  expect([demo.port, demo.dataDir, demo.backupDir]).toEqual([8123, DEMO_FOLDER, join(DEMO_FOLDER, 'backups')])
  expect(demo.backupDir).not.toBe(readConfig({}).backupDir)
})
