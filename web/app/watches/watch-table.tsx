import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { yearOf } from '../../../core/dates.ts'
import type { WatchView } from '../../../core/pricing/watches/watch.ts'
import { endWatch } from '../client/watches.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { useInstall, usePerson, useReader, useToday } from '../session/session.ts'
import { regionsQuery, storesQuery } from '../stores/stores-query.ts'
import { sayNothingThere, sayPlace, sayRequirement, sayTerms, sayTold } from './watch-words.ts'

const REGION_GONE = 'Ended: its region was taken out. Set a new one for the stores that you mean.'

/** One's own watches: of what, at which price, how often it told. */
export function WatchTable({ watches, onChange }: { watches: readonly WatchView[]; onChange: (watch: WatchView) => void }): ReactElement {
  const thisYear = yearOf(useToday())
  const titleOf = useTitle()
  const placeOf = usePlaceName()
  const silenceOf = useSilence()
  const [asked, setAsked] = useState<WatchView | null>(null)
  const columns: Array<Column<WatchView>> = [
    { key: 'of', head: 'What', rowHead: true, phone: 'lead', cell: (watch) => <WatchedThing watch={watch} title={titleOf(watch)} /> },
    {
      key: 'terms',
      head: 'When to tell',
      phone: 'below',
      cell: (watch) =>
        watch.regionGone ? (
          REGION_GONE
        ) : (
          <Terms said={sayTerms(watch, watch.currency, thisYear, placeOf(watch))} silence={silenceOf(watch)} />
        ),
    },
    {
      key: 'told',
      head: 'Told',
      num: true,
      phone: 'figure',
      cell: ({ told }) => sayTold(told),
    },
    {
      key: 'act',
      head: <span className="sr">What can be done</span>,
      end: true,
      phone: 'acts',
      cell: (watch) => (
        <span className="votes">
          {!watch.regionGone && (
            <Button small aria-label={`Change the watch of ${titleOf(watch)}`} onClick={() => onChange(watch)}>
              Change
            </Button>
          )}
          <Button small aria-label={`${endWord(watch)} the watch of ${titleOf(watch)}`} onClick={() => setAsked(watch)}>
            {endWord(watch)}
          </Button>
        </span>
      ),
    },
  ]
  return (
    <>
      <RuledTable caption="Your watches" columns={columns} rows={watches} rowKey={({ id }) => id} />
      <EndDialog watch={asked} title={asked ? titleOf(asked) : ''} onClose={() => setAsked(null)} />
    </>
  )
}

/** One that has ended already is taken off the list. */
const endWord = ({ regionGone }: WatchView): string => (regionGone ? 'Remove' : 'End')

/** Where a watch looks: its one store, else its region, by name once that is known; null: anywhere, or several stores. */
function usePlaceName(): (watch: WatchView) => string | null {
  const [regions, stores] = [useQuery(regionsQuery), useQuery(storesQuery)]
  return ({ regionId, storeIds }) => {
    const [storeId] = storeIds
    if (storeId !== undefined) return sayPlace('store', stores.data?.find(({ id }) => id === storeId)?.name)
    return regionId === null ? null : sayPlace('region', regions.data?.find(({ id }) => id === regionId)?.name)
  }
}

function Terms({ said, silence }: { said: string; silence: string | null }): ReactElement {
  if (silence === null) return <>{said}</>
  return (
    <>
      {said}
      <br />
      <strong>{silence}</strong>
    </>
  )
}

/** Why a watch can tell nothing, in a place that is a store; null where it can, and while that is not known. */
function useSilence(): (watch: WatchView) => string | null {
  const isStore = useInstall().mode === 'store'
  const [regions, stores] = [useQuery(regionsQuery), useQuery(storesQuery)]
  return (watch) => {
    if (!isStore || !regions.data || !stores.data) return null
    const inRegion = watch.regionId === null ? undefined : regions.data.find(({ id }) => id === watch.regionId)?.storeIds
    return sayNothingThere(watch, stores.data.find(({ own }) => own)?.id, inRegion)
  }
}

/** What a watch is of, in words. */
export function useTitle(): (watch: WatchView) => string {
  const [reader, install] = [useReader(), useInstall()]
  return ({ productName, requirement, quoteNumber }) =>
    requirement === null ? (productName ?? '') : sayRequirement(requirement, quoteNumber, reader, install)
}

function WatchedThing({ watch: { productId, requirement }, title }: { watch: WatchView; title: string }): ReactElement {
  const { role } = usePerson()
  if (productId !== null)
    return (
      <Link to="/prices/$productId" params={{ productId }}>
        {title}
      </Link>
    )
  const fits = requirement?.fits ?? null
  if (fits === null || role === 'member') return <>{title}</>
  return (
    <Link to="/quotes/$quoteId" params={{ quoteId: fits.quoteId }}>
      {title}
    </Link>
  )
}

function EndDialog({ watch, title, onClose }: { watch: WatchView | null; title: string; onClose: () => void }): ReactElement {
  const queries = useQueryClient()
  const end = useMutation({
    mutationFn: endWatch,
    onSuccess: async () => {
      onClose()
      await queries.invalidateQueries({ queryKey: ['watches'] })
    },
  })
  return (
    <Dialog
      open={watch !== null}
      title={`${watch ? endWord(watch) : 'End'} the watch of ${title}?`}
      onClose={onClose}
      actions={
        <>
          <Button onClick={onClose}>Keep it</Button>
          <Button look="main" busy={end.isPending} onClick={() => watch && end.mutate(watch.id)}>
            {watch ? endWord(watch) : 'End'} it
          </Button>
        </>
      }
    >
      <p>What it told you stays in the list.</p>
      <ErrorNotice error={end.error} />
    </Dialog>
  )
}
