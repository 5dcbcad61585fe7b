import * as z from 'zod'
import { LivestockGroupSchema } from '../../core/sizing/schema.ts'
import { version } from './catalog.ts'
import { answer } from './registry.ts'

export const LivestockGroupAnswer = answer('LivestockGroup', z.strictObject({ ...LivestockGroupSchema.shape, version }))
export const LivestockGroupsAnswer = answer('LivestockGroups', z.strictObject({ items: z.array(LivestockGroupAnswer) }))
