import * as z from 'zod'
import { ReaderUnitsSchema } from '../../core/install/schema.ts'
import type { Install } from '../../core/install.ts'
import { LivestockGroupSchema } from '../../core/sizing/schema.ts'
import { DEVICES } from '../../core/people/device.ts'
import { ROLES } from '../../core/people/roles.ts'
import { amount, id, instant, version } from './catalog.ts'
import { answer } from './registry.ts'

const auditValue = z.union([z.string(), z.number(), z.boolean()]).nullable()

const installShape = {
  name: z.string(),
  mode: z.enum(['club', 'store']),
  currency: z.string(),
  country: z.string(),
  timeZone: z.string(),
  units: ReaderUnitsSchema,
  contact: z.string(),
  paper: z.enum(['a4', 'letter']),
  energyPriceMinor: z.number(),
  circuitVoltageV: z.number(),
  circuitCurrentA: z.number(),
  leastSavingMinor: amount.optional(),
}
export const InstallPlain = answer(
  'Install',
  z.strictObject({ ...installShape, livestock: z.array(LivestockGroupSchema).optional() }) satisfies z.ZodType<Install>,
)
export const InstallAnswer = answer('VersionedInstall', z.strictObject({ ...installShape, version }))

export const SessionAnswer = answer(
  'Session',
  z.strictObject({
    person: z.strictObject({ id, name: z.string(), role: z.enum(ROLES), units: ReaderUnitsSchema.nullable() }).nullable(),
    install: InstallPlain,
  }),
)
export type SessionView = z.output<typeof SessionAnswer>

export const LinkAnswer = answer(
  'OneUseLink',
  z.strictObject({
    purpose: z.enum(['first_manager', 'invite', 'new_password']),
    role: z.enum(ROLES),
    name: z.string().nullable(),
    /** Whose password the link sets; null for a link that makes an account. */
    signInName: z.string().nullable(),
  }),
)

export const OwnSessionsAnswer = answer(
  'OwnSessions',
  z.strictObject({
    items: z.array(
      z.strictObject({ id: z.string(), device: z.enum(DEVICES), begunAt: instant, lastUsedAt: instant, current: z.boolean() }),
    ),
  }),
)

export const AuditAnswer = answer(
  'AuditTrail',
  z.strictObject({
    items: z.array(
      z.strictObject({
        id,
        at: instant,
        /** Null for the service itself, or somebody at its console. */
        actor: z.strictObject({ id, name: z.string() }).nullable(),
        action: z.string(),
        subject: z.strictObject({ kind: z.string(), id: z.string().nullable(), name: z.string().nullable() }),
        changes: z.array(z.strictObject({ field: z.string(), before: auditValue.optional(), after: auditValue.optional() })),
      }),
    ),
    total: z.int(),
  }),
)

export const PersonAnswer = answer(
  'Person',
  z.strictObject({
    id,
    name: z.string(),
    signInName: z.string(),
    role: z.enum(ROLES),
    invitedBy: id.nullable(),
    disabled: z.boolean(),
    createdAt: instant,
    version,
  }),
)
export const PeopleAnswer = answer('People', z.strictObject({ items: z.array(PersonAnswer) }))
export const InvitationAnswer = answer(
  'Invitation',
  z.strictObject({
    url: z.url(),
    expiresAt: instant,
    /** The link names this computer: on any other it leads nowhere. */
    thisComputerOnly: z.boolean(),
  }),
)
export const InvitationsAnswer = answer(
  'OpenInvitations',
  z.strictObject({
    items: z.array(z.strictObject({ id, name: z.string(), role: z.enum(ROLES), madeBy: z.string(), expiresAt: instant })),
  }),
)

answer(
  'Problem',
  z.strictObject({
    type: z.string(),
    title: z.string(),
    status: z.int(),
    detail: z.string(),
    requestId: z.string().optional(),
    errors: z.array(z.strictObject({ field: z.string(), limit: z.string().optional(), message: z.string() })),
  }),
)
export const HealthAnswer = answer('Health', z.strictObject({ status: z.enum(['live', 'ready', 'starting', 'stopping', 'no_database']) }))
