import type { Build } from '../../../core/quote/draft.ts'
import { newId } from '../post/uuid-v7.ts'

const NAMES = ['First build', 'Second build', 'Third build', 'Fourth build']

/** A build without lines, named by its place until the advisor names it. */
export const newBuild = (place: number): Build => ({ id: newId(), name: NAMES[place] ?? '', why: '', lines: [] })
