import { useQuery } from '@tanstack/react-query'
import { Link, useParams } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { KIND_NAMES } from '../../../core/catalog/kinds.ts'
import type { Product } from '../../../core/catalog/product.ts'
import { specNotes } from '../../../core/catalog/spec-notes.ts'
import { atLeast } from '../../../core/people/roles.ts'
import type { PriceRecord } from '../../../core/pricing/record.ts'
import type { PriceAhead } from '../../plots/price-record-data.ts'
import { sayPhrase } from '../../../core/units/say.ts'
import { MissingMeasure } from '../catalog/missing-measure.tsx'
import { specWords } from '../catalog/spec-words.ts'
import { getRecord } from '../client/products.ts'
import { Button } from '../parts/button.tsx'
import { Screen } from '../parts/screen.tsx'
import { DipSign } from '../parts/signs.tsx'
import { Empty, ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { useCurrency, useInstall, usePerson, useReader } from '../session/session.ts'
import { KitContents } from './kit-contents.tsx'
import type { Behind } from './behind.ts'
import { answerOf } from './product-answer.ts'
import { ListedAnswer } from './listed-answer.tsx'
import { ProductFigure } from './product-figure.tsx'
import { ProductSummary } from './product-summary.tsx'
import { inCurrency } from './in-currency.ts'
import { OtherClubsSection } from './other-clubs-section.tsx'
import { OutlookSection } from './outlook-section.tsx'
import { aheadOf, useOutlook } from './use-outlook.ts'
import { RecordFigure } from './record-figure.tsx'
import { RolledUpSection } from './rolled-up-section.tsx'
import { namesSighting, SightingsSection, type WholeRecord } from './sightings-section.tsx'
import { useStoreCurrency } from '../stores/store-currency.ts'
import { WaitingTold } from './waiting-told.tsx'
import './prices.css'

/** One product's prices: the answer, its figures, the record, the sightings. */
export function ProductScreen(): ReactElement {
  const { productId } = useParams({ from: '/prices/$productId' })
  const [wholeOf, setWholeOf] = useState(namesSighting() ? productId : '')
  const whole = wholeOf === productId
  const record = useQuery({
    queryKey: whole ? ['record', productId, 'whole'] : ['record', productId],
    queryFn: () => getRecord(productId, whole),
    placeholderData: (before: PriceRecord | undefined) => (before?.product.id === productId ? before : undefined),
  })
  if (record.data)
    return (
      <ProductPrices
        key={productId}
        record={record.data}
        whole={{ asked: whole, busy: record.isFetching, ask: () => setWholeOf(productId) }}
      />
    )
  return (
    <Screen title="Product">
      {record.error ? <ErrorNotice error={record.error} onRetry={() => void record.refetch()} /> : <LoadingRows what="the prices" />}
    </Screen>
  )
}

const PostLink = ({ productId }: { productId: string }): ReactElement => (
  <Link to="/post" search={{ product: productId }} className="btn main">
    Post a sighting
  </Link>
)

/** What the maker states; of a kit also what is in the box. */
function Stated({ product }: { product: Product }): ReactElement {
  const words = specWords(product, useReader(), useInstall()).join(' · ')
  if (product.kind !== 'kit') return <>{words || 'The maker’s figures were not entered.'}</>
  return (
    <>
      {words && `${words} · `}
      <KitContents kit={product} />
    </>
  )
}

/** What follows from the figures by itself, where anything does. */
function SpecNotes({ product }: { product: Product }): ReactElement | null {
  const reader = useReader()
  const notes = specNotes(product)
  if (notes.length === 0) return null
  return <span className="spec-notes">{notes.map(({ text }) => sayPhrase(text, reader)).join(' ')}</span>
}

function ProductPrices({ record, whole }: { record: PriceRecord; whole: WholeRecord }): ReactElement {
  const person = usePerson()
  const isStore = useInstall().mode === 'store'
  const { product, sightings } = record
  return (
    <Screen
      title={product.name}
      pageTitle={`${product.name} · prices`}
      above={
        <>
          <Link to="/prices" search={{}}>
            Prices
          </Link>{' '}
          · {KIND_NAMES[product.kind]}
          {product.archived && ' · archived'}
        </>
      }
      below={
        <>
          <Stated product={product} />
          <SpecNotes product={product} />
          <MissingMeasure kind={product.kind} spec={product.spec} />
        </>
      }
      actions={
        <>
          {atLeast(person.role, 'advisor') && (
            <Link to="/catalog/$productId" params={{ productId: product.id }} className="btn">
              Edit
            </Link>
          )}
          {!product.archived && (
            <Link to="/watches" search={{ product: product.id }} className="btn">
              Watch this
            </Link>
          )}
          {!product.archived && sightings.length > 0 && <PostLink productId={product.id} />}
        </>
      }
    >
      <WaitingTold personId={person.id} />
      {isStore ? <ListedAnswer record={record} /> : sightings.length === 0 && <ProductFigure productId={product.id} name={product.name} />}
      {sightings.length === 0 && isStore ? null : sightings.length === 0 ? (
        <Empty action={product.archived ? undefined : <PostLink productId={product.id} />}>
          No sightings of it yet. Post the first one.
        </Empty>
      ) : isStore ? (
        <SeenSections record={record} whole={whole} />
      ) : (
        <RecordSections record={record} whole={whole} />
      )}
      <OtherClubsSection productId={product.id} asOf={record.asOf} />
    </Screen>
  )
}

function RecordSections({ record, whole }: { record: PriceRecord; whole: WholeRecord }): ReactElement {
  const home = useCurrency()
  const currencyOf = useStoreCurrency()
  const told = inCurrency(record, currencyOf, home)
  const outlook = useOutlook(record.product.id, record.asOf)
  const [behind, setBehind] = useState<Behind | null>(null)
  const answer = answerOf(told, home)
  const foreign = [...new Set(record.sightings.map(({ storeId }) => currencyOf(storeId)))].filter((currency) => currency !== home)
  return (
    <>
      <div className="answer-cols">
        <ProductFigure productId={record.product.id} name={record.product.name} />
        <div className="answer">
          <h2>{answer.title}</h2>
          <p className="lead">{answer.words}</p>
          <p className="note">
            As each store prints it, before delivery and any tax that it adds. As seen on the date; not an offer by the store.
            {foreign.length > 0 && ` Prices in ${foreign.join(', ')} stand in the list below alone.`}
          </p>
        </div>
        <ProductSummary record={told} onOpen={setBehind} />
      </div>
      {!record.product.archived && <OutlookSection outlook={outlook} asOf={record.asOf} />}
      <RolledUpSection record={record} onOpen={setBehind} />
      <RecordPlot told={told} record={record} whole={whole} ahead={record.product.archived ? undefined : aheadOf(outlook.onTags)} />
      <SightingsSection sightings={record.sightings} total={record.total} whole={whole} behind={behind} onAll={() => setBehind(null)} />
    </>
  )
}

/** What members saw, for whoever wants to compare: it counts in nothing here. */
function SeenSections({ record, whole }: { record: PriceRecord; whole: WholeRecord }): ReactElement {
  const told = inCurrency(record, useStoreCurrency(), useCurrency())
  return (
    <>
      <p className="note">What members saw, at whichever store, stands below to compare. It counts in no quote and in no watch here.</p>
      <RecordPlot told={told} record={record} whole={whole} ahead={undefined} />
      <SightingsSection sightings={record.sightings} total={record.total} whole={whole} behind={null} onAll={() => undefined} />
    </>
  )
}

interface PlotProps {
  /** The record in the install's currency. */
  told: PriceRecord
  record: PriceRecord
  whole: WholeRecord
  ahead: PriceAhead | undefined
}

function RecordPlot({ told, record, whole, ahead }: PlotProps): ReactElement {
  return (
    <section aria-labelledby="record-head">
      <div className="sechead">
        <h2 id="record-head">Price record</h2>
        <p className="key" aria-hidden="true">
          <span className="key-shelf">shelf price</span>
          <span className="key-sale">sale price</span>
          <span className="sale">
            <DipSign /> a sale, below the shelf price then
          </span>
        </p>
      </div>
      <RecordFigure record={told} ahead={ahead} />
      {record.sightings.length < record.total && (
        <p className="note acts">
          Drawn from the newest {record.sightings.length} of {record.total} sightings.
          <Button small busy={whole.busy} onClick={whole.ask}>
            Draw the whole record
          </Button>
        </p>
      )}
    </section>
  )
}
