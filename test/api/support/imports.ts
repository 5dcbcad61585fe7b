import type { ImportView } from '../../../core/exchange/import-view.ts'
import type { DataSet } from '../../../core/exchange/data-set.ts'
import { jobHandlers } from '../../../api/jobs/handlers.ts'
import { startWorker, type Worker } from '../../../api/jobs/worker.ts'
import type { Browser, World } from './world.ts'

/** The background worker of a world; stop it before the world is closed. */
export function workIn(world: World): Worker {
  const { deps, db } = world
  const worker = startWorker({ db, engine: deps.engine, handlers: jobHandlers(deps), clock: deps.clock, log: deps.log })
  world.rebuild({ wake: worker.wake })
  return worker
}

export interface Sending {
  set?: DataSet
  kind?: string
  dryRun?: boolean
  type?: string
}

export const addressOf = ({ set = 'catalog', kind, dryRun = false }: Sending): string =>
  `/api/imports?set=${set}&dryRun=${dryRun}&fileName=rows${kind === undefined ? '' : `&kind=${kind}`}`

/** Sends a file; the import as it was queued. */
export const sendFile = (manager: Browser, file: string, sending: Sending = {}) =>
  manager.send<ImportView>('POST', addressOf(sending), { body: file, headers: { 'content-type': sending.type ?? 'text/csv' } })

export async function ended(manager: Browser, id: string, withinMs = 60_000): Promise<ImportView> {
  const end = Date.now() + withinMs
  while (Date.now() < end) {
    const { body } = await manager.send<ImportView>('GET', `/api/imports/${id}`)
    if (body.endedAt !== null) return body
    await new Promise((resolve) => setTimeout(resolve, 10))
  }
  throw new Error('the import did not end')
}

/** Sends a file and waits for what comes of it. Errors: throws where it is not taken. */
export async function importFile(manager: Browser, file: string, sending: Sending = {}): Promise<ImportView> {
  const sent = await sendFile(manager, file, sending)
  if (sent.status !== 201) throw new Error(`the file was answered with ${sent.status}: ${sent.text}`)
  return ended(manager, sent.body.id)
}
