import type { Build } from '../../../core/quote/draft.ts'
import { newId } from '../post/new-id.ts'

/** A build without lines, called after its tank until the advisor names it. */
export const newBuild = (): Build => ({ id: newId(), name: '', why: '', lines: [] })
