import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { type ReactElement } from 'react'
import { yearOf } from '../../../core/dates.ts'
import { makeFeedLink, removeFeedLink, type FeedLink } from '../client/watches.ts'
import { Button } from '../parts/button.tsx'
import { sayInstant } from '../parts/say-instant.ts'
import { ErrorNotice } from '../parts/states.tsx'
import { Told } from '../parts/told.tsx'
import { useInstall, useToday } from '../session/session.ts'
import { feedLinkQuery } from './watches-query.ts'

/** What was told, as a feed for a reader program: behind an address that is told once. */
export function FeedSection(): ReactElement {
  const { timeZone } = useInstall()
  const thisYear = yearOf(useToday())
  const queries = useQueryClient()
  const link = useQuery(feedLinkQuery)
  const refresh = () => queries.invalidateQueries({ queryKey: feedLinkQuery.queryKey })
  const make = useMutation({ mutationFn: makeFeedLink, onSuccess: refresh })
  const remove = useMutation({
    mutationFn: removeFeedLink,
    onSuccess: async () => {
      make.reset()
      await refresh()
    },
  })
  const createdAt = link.data?.createdAt ?? null
  return (
    <section aria-labelledby="feed-head" className="feed-section">
      <h2 id="feed-head">In a feed reader</h2>
      <p>What you are told also comes as a feed, Atom or JSON. Whoever has its address reads it: keep it to yourself.</p>
      {make.data && <Addresses link={make.data} />}
      <ErrorNotice error={link.error ?? make.error ?? remove.error} />
      {createdAt !== null && !make.data && <p className="note">An address was made on {sayInstant(createdAt, timeZone, thisYear)}.</p>}
      <p className="acts">
        <Button busy={make.isPending} onClick={() => make.mutate()}>
          {createdAt === null ? 'Make an address' : 'Make a new address'}
        </Button>
        {createdAt !== null && (
          <Button busy={remove.isPending} onClick={() => remove.mutate()}>
            Switch it off
          </Button>
        )}
      </p>
    </section>
  )
}

function Addresses({ link: { atom, json } }: { link: FeedLink }): ReactElement {
  if (atom === null || json === null)
    return (
      <Told kind="warn" title="No address on plain http" live>
        <p>Open this site by https, or on its own computer.</p>
      </Told>
    )
  return (
    <Told kind="note" title="Copy it now: it is not shown again" live>
      <dl className="feed-links">
        <dt>Atom</dt>
        <dd>
          <code>{atom}</code>
        </dd>
        <dt>JSON</dt>
        <dd>
          <code>{json}</code>
        </dd>
      </dl>
      <p>An address that was made before opens nothing any more.</p>
    </Told>
  )
}
