import { useQuery } from '@tanstack/react-query'
import { Link, useParams } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { sayDate, yearOf, type CivilDate } from '../../../core/dates.ts'
import { sayMoney } from '../../../core/money.ts'
import type { LineOutlookView } from '../../../core/pricing/outlook-view.ts'
import { sayDays } from '../../../core/pricing/sale-time-words.ts'
import { ChoiceField } from '../parts/choice-fields.tsx'
import { MoneyField } from '../parts/figure-fields.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { useCurrency } from '../session/session.ts'
import { saleFact } from './sale-fact.ts'
import { storesQuery } from '../stores/stores-query.ts'
import type { OutlookSearch } from './outlook-search.ts'
import { AHEAD, firstAhead, untilOf, type Ahead, type AskedOutlook } from './use-outlook.ts'

/** What the record says of the coming weeks: whether waiting pays, what will be paid by the advice, the price to buy at. */
export function OutlookSection({
  outlook: { answer: outlook, ahead, asked, setAhead, weekWaitMinor, setWeekWait },
  asOf,
}: {
  outlook: AskedOutlook
  asOf: CivilDate
}): ReactElement | null {
  if (outlook.error) return <ErrorNotice error={outlook.error} onRetry={() => void outlook.refetch()} />
  const line = outlook.data?.lines[0]
  if (!outlook.data || (outlook.data.learnedOn !== null && !line)) return null
  return (
    <section aria-labelledby="outlook-head" className="outlook">
      <h2 id="outlook-head">What to expect</h2>
      {line ? (
        <>
          <div className="outlook-asks">
            <ChoiceField label="I can wait until" value={ahead} options={aheadOptions(asOf, asked)} onChange={setAhead} />
            <MoneyField
              label="What a week’s wait is worth to me"
              required={false}
              value={weekWaitMinor}
              least={1}
              help="Left empty, waiting costs nothing and only the day ends it."
              onChange={(minor, fault) => fault === null && setWeekWait(minor)}
            />
          </div>
          <AsTheQuoteAsks asked={asked} />
          <Expected line={line} asOf={asOf} until={outlook.data.until} />
        </>
      ) : (
        <p>What the record says of the weeks ahead is being worked out. Come back in a minute.</p>
      )}
    </section>
  )
}

/** The day of the quote first, where it is ahead. */
function aheadOptions(asOf: CivilDate, asked: OutlookSearch): Array<{ value: Ahead; label: string }> {
  const first: Ahead[] = firstAhead(asOf, asked) === 'asked' ? ['asked'] : []
  return [...first, ...(Object.keys(AHEAD) as Ahead[])].map((value) => ({
    value,
    label: sayDate(untilOf(value, asOf, asked), yearOf(asOf)) + (value === 'asked' ? ', the quote’s' : ''),
  }))
}

/** Whose question is answered, and on which basis: the quote tells the tag of its own store. */
function AsTheQuoteAsks({ asked: { store: storeId } }: { asked: OutlookSearch }): ReactElement | null {
  const store = useQuery(storesQuery).data?.find(({ id }) => id === storeId)
  const { productId } = useParams({ from: '/prices/$productId' })
  if (!store) return null
  return (
    <p className="note">
      As the quote asks: bought at {store.name}. A price to buy at is its tag’s, {store.pricesIncludeTax ? 'tax included' : 'before tax'};
      what is paid is told with tax.{' '}
      <Link to="/prices/$productId" params={{ productId }} search={(now) => ({ ...now, store: undefined })} hash="outlook-head">
        At any store
      </Link>
    </p>
  )
}

function Expected({ line, asOf, until }: { line: LineOutlookView; asOf: CivilDate; until: CivilDate }): ReactElement {
  const currency = useCurrency()
  const money = (minor: number | null): string => (minor === null ? 'not known' : sayMoney(minor, currency))
  const year = yearOf(asOf)
  const { title, words, payTodayMinor, expectedPaidMinor, paid10Minor, paid90Minor, nextSaleTime: next } = line
  const sure = paid10Minor === paid90Minor
  return (
    <>
      <div aria-live="polite">
        <h3>{title}</h3>
        <p className="lead">{words}</p>
      </div>
      {payTodayMinor !== null && (
        <dl className="facts">
          <div>
            <dt>Paid by {sayDate(until, year)}, following this</dt>
            <dd>
              {sure ? money(expectedPaidMinor) : `about ${money(expectedPaidMinor)}`} with tax
              {!sure && (
                <span className="note">
                  {' '}
                  {money(paid10Minor)} to {money(paid90Minor)} in 8 of 10 cases
                </span>
              )}
            </dd>
          </div>
          <SaleFact line={line} year={year} />
          <div>
            <dt>Next sale time</dt>
            <dd>
              {next ? (
                <>
                  {next.name}, {sayDays(next, year)}
                </>
              ) : (
                'none known by then'
              )}
              {' · '}
              <Link to="/prices/sale-calendar">Sale calendar</Link>
            </dd>
          </div>
        </dl>
      )}
      <p className="note">
        Expected from what members reported, with tax and before delivery; no promise.{' '}
        {line.basis === 'kind' && 'Little is on record of this product: it is taken to be like others of its kind.'}
      </p>
    </>
  )
}

/** A sale that runs, or the chance of one. */
function SaleFact({ line, year }: { line: LineOutlookView; year: number }): ReactElement | null {
  const fact = saleFact(line, useCurrency(), year)
  if (fact === null) return null
  return (
    <div>
      <dt>{fact.head}</dt>
      <dd>{fact.told}</dd>
    </div>
  )
}
