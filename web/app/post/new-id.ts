import { uuidV7 } from '../../../core/uuid-v7.ts'

/** A new id, made here and now. */
export const newId = (): string => uuidV7(Date.now(), crypto.getRandomValues(new Uint8Array(10)))
