import { createInterface } from 'node:readline/promises'
import { Writable } from 'node:stream'

/** Asks on the terminal without showing what is typed; null where there is no terminal to ask on. */
export async function askPassphrase(question: string): Promise<string | null> {
  if (!process.stdin.isTTY || !process.stderr.isTTY) return null
  const silent = new Writable({ write: (_chunk, _encoding, done) => done() })
  const reader = createInterface({ input: process.stdin, output: silent, terminal: true })
  process.stderr.write(`${question}: `)
  try {
    return await reader.question('')
  } finally {
    reader.close()
    process.stderr.write('\n')
  }
}
