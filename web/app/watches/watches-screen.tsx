import { useQuery } from '@tanstack/react-query'
import { Link, useNavigate, useSearch } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { MOST_A_DAY } from '../../../core/pricing/watches/match.ts'
import type { WatchView } from '../../../core/pricing/watches/watch.ts'
import { Screen } from '../parts/screen.tsx'
import { Empty, ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { useInstall } from '../session/session.ts'
import { FeedSection } from './feed-section.tsx'
import { NewWatchForm } from './new-watch-form.tsx'
import { NoticeList } from './notice-list.tsx'
import { WatchForm } from './watch-form.tsx'
import { WatchTable } from './watch-table.tsx'
import { watchesQuery } from './watches-query.ts'
import './watches.css'

/** What one waits for, and what one was told. */
export function WatchesScreen(): ReactElement {
  const search = useSearch({ from: '/watches' })
  const navigate = useNavigate({ from: '/watches' })
  const watches = useQuery(watchesQuery)
  const isStore = useInstall().mode === 'store'
  const [changed, setChanged] = useState<WatchView | null>(null)
  const isNew = search.product !== undefined || search.kind !== undefined
  const leave = (): void => void navigate({ search: {}, replace: true })
  return (
    <Screen
      title="Watches"
      below={`You are told of each price once: of those that stand now at once, later as soon as ${isStore ? 'our list has one' : 'somebody reports one'}. Of many at once, a watch tells the ${MOST_A_DAY} lowest in a day; the rest on the days after, while they stand.`}
    >
      {isNew && <NewWatchForm key={JSON.stringify(search)} search={search} onDone={leave} />}
      {changed && <WatchForm key={changed.id} watch={changed} onDone={() => setChanged(null)} />}
      <NoticeList />
      <section aria-labelledby="watches-head">
        <h2 id="watches-head">You watch</h2>
        <ErrorNotice error={watches.error} onRetry={() => void watches.refetch()} />
        {watches.isPending && <LoadingRows rows={3} what="your watches" />}
        {watches.data?.length === 0 && (
          <Empty action={<Link to="/prices">To the prices</Link>}>Nothing yet. Open a product and press “Watch this”.</Empty>
        )}
        {watches.data && watches.data.length > 0 && <WatchTable watches={watches.data} onChange={setChanged} />}
      </section>
      <FeedSection />
    </Screen>
  )
}
