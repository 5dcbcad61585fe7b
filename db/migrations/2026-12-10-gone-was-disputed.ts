import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/**
 * "Gone" was kept as a dispute before it was a word of its own. Such a dispute is told from one that somebody meant by its minute, that of the answer, and by the answer being older than that
 * word: it becomes what it said, and the report counts again. What somebody found gone who is disabled does not count.
 */
const STATEMENTS = [
  sql`with was as (
      select v.sighting_id, v.person_id, min((n.answered_at at time zone store.time_zone)::date) as day, array_agg(n.id) as notices
      from notice n join sighting_vote v on v.sighting_id = n.sighting_id and v.person_id = n.person_id join store on store.id = n.store_id
      where n.answer = 'gone' and v.vote = 'dispute' and v.gone_on is null and abs(extract(epoch from v.at - n.answered_at)) < 60
        and n.answered_at < (select "timestamp"::timestamptz from kysely_migration where name = '2026-12-08-found-gone')
      group by v.sighting_id, v.person_id
    ), said as (
      update sighting_vote v set vote = null, gone_on = was.day, gone_by = was.notices from was
      where v.sighting_id = was.sighting_id and v.person_id = was.person_id returning v.sighting_id
    )
    update sighting s set disputes = greatest(0, s.disputes - one.votes)
    from (select sighting_id, count(*)::integer as votes from said group by sighting_id) as one where s.id = one.sighting_id`,
  sql`update sighting s set gone_on = found.day
    from (select v.sighting_id, min(v.gone_on) filter (where p.disabled_at is null) as day
      from sighting_vote v join person p on p.id = v.person_id where v.gone_on is not null group by v.sighting_id) as found
    where s.id = found.sighting_id and s.gone_on is distinct from found.day`,
]

export const goneWasDisputed: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of STATEMENTS) await statement.execute(db)
  },
}
