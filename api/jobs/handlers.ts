import type { Deps } from '../context.ts'
import type { JobHandler } from './task.ts'

/** Every kind of background work by its name. A kind that is not here is left to a later release. */
export const jobHandlers = (_deps: Pick<Deps, 'config'>): Readonly<Record<string, JobHandler>> => ({})
