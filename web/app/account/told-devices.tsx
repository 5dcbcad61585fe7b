import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import type { ReactElement } from 'react'
import { yearOf } from '../../../core/dates.ts'
import { deviceOf } from '../../../core/people/device.ts'
import { addOwnDevice, removeOwnDevice, type HearingView } from '../client/hearing.ts'
import { askForMessages, endMessagesHere, idHere, messagesHere, NoMessages } from '../offline/messages-here.ts'
import { Button } from '../parts/button.tsx'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'
import { sayDay } from '../parts/say-instant.ts'
import { ErrorNotice } from '../parts/states.tsx'
import { Told } from '../parts/told.tsx'
import { useInstall, useToday } from '../session/session.ts'
import { HEARING } from './hearing-key.ts'

type Push = NonNullable<HearingView['push']>
type Device = Push['devices'][number]
const HERE = [...HEARING, 'here'] as const

const WHY = {
  not_secure: 'This page was opened on plain http. Open its https address: browsers give messages to secure pages alone.',
  not_able:
    'This browser gives no messages to pages. On some phones it does once this page has been put on the home screen and opened from there.',
  refused:
    'You or your browser refused messages from this place. Allow notifications for it in the settings of the browser, then load this page again.',
  not_answered: 'The browser’s question was closed without an answer. Press again and allow it, or leave it.',
  no_service:
    'The browser found no service that carries messages to it. It may be switched off in its settings, or kept out by the network.',
} as const

const capital = (word: string): string => word.slice(0, 1).toUpperCase() + word.slice(1)

/** Messages to this phone or computer, and to the others that were switched on. */
export function ToldDevices({ push }: { push: Push }): ReactElement {
  const queries = useQueryClient()
  const here = useQuery({ queryKey: HERE, queryFn: idHere, staleTime: 0 })
  const again = (): Promise<void> => queries.invalidateQueries({ queryKey: HEARING })
  const begin = useMutation({
    mutationFn: async () => addOwnDevice(await askForMessages(push.publicKey)),
    onSettled: again,
  })
  const end = useMutation({
    mutationFn: async (id: string) => (id === here.data ? endMessagesHere() : removeOwnDevice(id)),
    onMutate: () => begin.reset(),
    onSettled: again,
  })
  const device = deviceOf(navigator.userAgent)
  const told = push.devices.some(({ id }) => id === here.data)
  const can = messagesHere()
  const why = can === 'can' ? (begin.error instanceof NoMessages ? begin.error.why : null) : can
  return (
    <div className="hearing-way">
      <h3>Messages to this {device}</h3>
      <p className="quiet">
        {told
          ? `Switched on: this ${device} tells you as soon as there is a deal. Whoever sees its locked screen reads product, store and price.`
          : 'As soon as there is a deal, also while this page is closed.'}
      </p>
      {why !== null && (
        <Told kind={why === 'not_answered' ? 'note' : 'warn'} live>
          <p>{WHY[why]}</p>
        </Told>
      )}
      <ErrorNotice error={begin.error instanceof NoMessages ? end.error : (begin.error ?? end.error)} />
      {!told && can === 'can' && (
        <p className="acts">
          <Button busy={begin.isPending} onClick={() => begin.mutate()}>
            Switch messages on
          </Button>
        </p>
      )}
      {push.devices.length > 0 && (
        <DeviceTable devices={push.devices} here={here.data ?? null} busy={end.isPending} onEnd={(id) => end.mutate(id)} />
      )}
    </div>
  )
}

function DeviceTable(given: { devices: Device[]; here: string | null; busy: boolean; onEnd: (id: string) => void }): ReactElement {
  const { timeZone } = useInstall()
  const thisYear = yearOf(useToday())
  const day = (instant: string): string => sayDay(instant, timeZone, thisYear)
  const columns: Array<Column<Device>> = [
    {
      key: 'device',
      head: 'Told',
      rowHead: true,
      phone: 'lead',
      cell: ({ id, device }) => `${capital(device)}${id === given.here ? ', this one' : ''}`,
    },
    {
      key: 'since',
      head: 'Messages',
      phone: 'below',
      cell: ({ since, failingSince }) => (failingSince === null ? `since ${day(since)}` : `not reached since ${day(failingSince)}`),
    },
    {
      key: 'act',
      head: 'Change',
      end: true,
      phone: 'state',
      cell: ({ id, device, since }) => (
        <Button small busy={given.busy} aria-label={`Switch off the ${device} told since ${day(since)}`} onClick={() => given.onEnd(id)}>
          Switch off
        </Button>
      ),
    },
  ]
  return <RuledTable caption="Devices that are told of deals" columns={columns} rows={given.devices} rowKey={({ id }) => id} />
}
