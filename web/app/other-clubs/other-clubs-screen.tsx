import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { addOtherClub, listOtherClubs, setPublishing, type OtherClubsView } from '../client/other-clubs.ts'
import { faultsOf } from '../client/problem.ts'
import { Button } from '../parts/button.tsx'
import { TickField } from '../parts/choice-fields.tsx'
import { TextField } from '../parts/field.tsx'
import { Screen } from '../parts/screen.tsx'
import { ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { CopyButton } from '../setups/copy-button.tsx'
import { isBeingRead } from './club-words.ts'
import { OneClub } from './one-club.tsx'
import './other-clubs.css'

const KEY = ['other-clubs']
/** While a club is read for the first time somebody waits for it. */
const LOOK_AGAIN_MS = 1_500

/** Telling our prices to other clubs, and reading theirs. */
export function OtherClubsScreen(): ReactElement {
  const read = useQuery({
    queryKey: KEY,
    queryFn: listOtherClubs,
    refetchInterval: ({ state }) => (state.data?.clubs.some(isBeingRead) ? LOOK_AGAIN_MS : false),
  })
  return (
    <Screen
      title="Other clubs"
      above={<Link to="/settings">Settings</Link>}
      below="Clubs may tell one another the prices that their members saw. Names are never told, and what another club saw counts only where your members saw nothing."
      width="narrow"
    >
      <ErrorNotice error={read.data ? null : read.error} onRetry={() => void read.refetch()} />
      {read.isPending && <LoadingRows what="the other clubs" />}
      {read.data && <Telling view={read.data} />}
      {read.data && <Reading view={read.data} />}
    </Screen>
  )
}

/** Keeps the screen at what the server answered last. */
function useAnswer() {
  const queries = useQueryClient()
  return (view: OtherClubsView): void => void queries.setQueryData(KEY, view)
}

function Telling({ view: { publishes, address } }: { view: OtherClubsView }): ReactElement {
  const save = useMutation({ mutationFn: setPublishing, onSuccess: useAnswer() })
  return (
    <section className="clubs-part" aria-labelledby="telling-head">
      <h2 id="telling-head">Tell your prices</h2>
      <TickField
        label="Anyone may read what our members saw"
        help="Product, store, price and day of the last 12 months, at most 5000. No names, notes or hours, no customers, no quotes."
        checked={publishes}
        onChange={(on) => save.mutate(on)}
      />
      <ErrorNotice error={save.error} />
      {publishes && (
        <p className="club-address">
          <span>
            Give other clubs this address: <code>{address}</code>
          </span>
          <CopyButton text={address} what="the address of your prices" />
        </p>
      )}
      {publishes && !address.startsWith('https:') && (
        <p className="note">Other clubs can read it only once this place has an address on the internet that begins with https://.</p>
      )}
    </section>
  )
}

function Reading({ view: { clubs } }: { view: OtherClubsView }): ReactElement {
  const [address, setAddress] = useState('')
  const keep = useAnswer()
  const add = useMutation({
    mutationFn: () => addOtherClub(address.trim()),
    onSuccess: (view) => {
      setAddress('')
      keep(view)
    },
  })
  const faults = faultsOf(add.error)
  return (
    <section className="clubs-part" aria-labelledby="reading-head">
      <h2 id="reading-head">Clubs that you read</h2>
      {clubs.length === 0 && (
        <p className="quiet">
          None yet. Once a day their prices are fetched; say then which of their stores are stores of yours. A price of theirs is marked
          with the club’s name on the desk and on the product’s page.
        </p>
      )}
      {clubs.map((club) => (
        <OneClub key={club.id} club={club} onAnswer={keep} />
      ))}
      <form
        className="form"
        noValidate
        onSubmit={(event) => {
          event.preventDefault()
          if (!add.isPending) add.mutate()
        }}
      >
        <TextField
          label="Address of another club’s prices"
          help="As its manager reads it on the same screen there. It begins with https://"
          value={address}
          maxLength={300}
          inputMode="url"
          fault={faults['address']}
          onChange={setAddress}
        />
        <ErrorNotice error={add.error} shown={['address']} />
        <p className="acts">
          <Button look="main" type="submit" busy={add.isPending}>
            Read this club
          </Button>
        </p>
      </form>
    </section>
  )
}
