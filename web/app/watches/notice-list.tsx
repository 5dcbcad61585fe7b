import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { useEffect, useState, type ReactElement } from 'react'
import { yearOf } from '../../../core/dates.ts'
import { sayMoney } from '../../../core/money.ts'
import type { Notice } from '../../../core/pricing/watches/notice.ts'
import { answerNotice, markSeen, takeBackGone } from '../client/watches.ts'
import { Button } from '../parts/button.tsx'
import { sayInstant } from '../parts/say-instant.ts'
import { ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { newId } from '../post/new-id.ts'
import { useInstall, useToday } from '../session/session.ts'
import { noticeCountQuery, noticesQuery } from './watches-query.ts'
import { DONE_WORDS, sayNotice } from './watch-words.ts'

const PAGE = 20
const MOST = 200

/** What was told, newest first; looking at it is having seen it. */
export function NoticeList(): ReactElement | null {
  const [limit, setLimit] = useState(PAGE)
  const told = useQuery(noticesQuery(limit))
  const queries = useQueryClient()
  const newest = told.data?.items[0]
  const notSeen = told.data?.notSeen ?? 0
  const seen = useMutation({ mutationFn: markSeen, onSuccess: (count) => queries.setQueryData(noticeCountQuery.queryKey, count) })
  const { mutate } = seen
  useEffect(() => {
    if (newest !== undefined && notSeen > 0) mutate(newest.toldAt)
  }, [newest, notSeen, mutate])
  if (told.error) return <ErrorNotice error={told.error} onRetry={() => void told.refetch()} />
  if (!told.data) return <LoadingRows rows={3} what="what you were told" />
  if (told.data.items.length === 0) return null
  const { items, total } = told.data
  return (
    <section aria-labelledby="told-head">
      <h2 id="told-head">You were told</h2>
      <ul className="notices">
        {items.map((notice) => (
          <NoticeRow key={notice.id} notice={notice} />
        ))}
      </ul>
      {total > items.length && items.length < MOST && <Button onClick={() => setLimit(limit + PAGE)}>Show earlier ones</Button>}
    </section>
  )
}

function NoticeRow({ notice }: { notice: Notice }): ReactElement {
  const { timeZone } = useInstall()
  const thisYear = yearOf(useToday())
  const { productId, productName, storeName, totalMinor, totalCurrency, sightingId, toldAt, seenAt } = notice
  return (
    <li data-new={seenAt === null || undefined}>
      <div className="notice-head">
        <p>
          <Link to="/prices/$productId" params={{ productId }}>
            {productName}
          </Link>{' '}
          at {storeName}
        </p>
        <Link
          to="/prices/$productId"
          params={{ productId }}
          {...(sightingId === null ? {} : { hash: `s-${sightingId}` })}
          className="figure-link notice-price"
        >
          {sayMoney(totalMinor, totalCurrency)}
        </Link>
      </div>
      <p className="note">
        {sayNotice(notice, thisYear)} · told {sayInstant(toldAt, timeZone, thisYear)}
        {seenAt === null && <strong className="notice-new"> · new</strong>}
      </p>
      <div className="notice-found">
        {notice.withdrawn ? (
          <p className="note">Withdrawn since: nobody vouches for this price any more.</p>
        ) : (
          notice.sightingId !== null && <Found notice={notice} />
        )}
      </div>
    </li>
  )
}

/** "Still there" or "gone" in one tap; afterwards what it did, and "gone" can be taken back. */
function Found({ notice }: { notice: Notice }): ReactElement {
  const queries = useQueryClient()
  // Made once, so that a second try posts nothing a second time.
  const [sightingId] = useState(newId)
  const refresh = async (): Promise<void> => {
    await queries.invalidateQueries({ queryKey: ['watches', 'notices'] })
    void queries.invalidateQueries({ queryKey: ['record', notice.productId] })
    void queries.invalidateQueries({ queryKey: ['board'] })
  }
  const answer = useMutation({
    mutationFn: (given: 'still_there' | 'gone') => answerNotice(notice.id, given, sightingId),
    onSuccess: () => refresh(),
  })
  const undo = useMutation({
    mutationFn: () => takeBackGone(notice.id),
    onSuccess: async () => {
      answer.reset()
      await refresh()
    },
  })
  const name = `${notice.productName} at ${notice.storeName}`
  const said = answer.data ? DONE_WORDS[answer.data.done] : notice.answer === 'gone' ? 'You said: gone.' : 'You said: still there.'
  if (answer.data || notice.answer !== null)
    return (
      <>
        <p className="acts">
          <output className="note">{said}</output>
          {notice.answer === 'gone' && (
            <Button small busy={undo.isPending} aria-label={`Not gone, take it back: ${name}`} onClick={() => undo.mutate()}>
              Take it back
            </Button>
          )}
        </p>
        <ErrorNotice error={undo.error} />
      </>
    )
  return (
    <>
      <p className="acts">
        <Button busy={answer.isPending} aria-label={`Still there: ${name}`} onClick={() => answer.mutate('still_there')}>
          Still there
        </Button>
        <Button busy={answer.isPending} aria-label={`Gone: ${name}`} onClick={() => answer.mutate('gone')}>
          Gone
        </Button>
      </p>
      <ErrorNotice error={answer.error} />
    </>
  )
}
