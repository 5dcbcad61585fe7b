import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/** Livestock groups as they came with this release; a manager edits them and adds the club's own, each with its source. */
const STATEMENTS = [
  `create table livestock_group (
    id text constraint livestock_group_pk primary key constraint livestock_group_id check (id ~ '^[a-z0-9-]{3,60}$'),
    name text not null constraint livestock_group_name_length check (length(name) between 1 and 120),
    examples text not null,
    lowest_c double precision not null,
    target_c double precision not null constraint livestock_group_target check (target_c >= lowest_c),
    highest_c double precision not null constraint livestock_group_highest check (highest_c >= target_c),
    danger_c double precision not null constraint livestock_group_danger check (danger_c > highest_c),
    flow_ceiling_per_hour double precision,
    flow_floor_per_hour double precision not null constraint livestock_group_floor check (flow_floor_per_hour > 0),
    smallest_volume_l double precision not null constraint livestock_group_volume check (smallest_volume_l > 0),
    feed_grams_per_day double precision not null constraint livestock_group_feed check (feed_grams_per_day > 0),
    lid_needed boolean not null,
    water text not null constraint livestock_group_water check (water in ('fresh', 'salt')),
    source text not null constraint livestock_group_source check (length(source) between 1 and 500),
    standing text constraint livestock_group_standing check (standing in ('edited', 'own')),
    version integer not null default 1)`,
  'create unique index livestock_group_name_once on livestock_group (lower(name))',
  `insert into livestock_group (id, name, examples, lowest_c, target_c, highest_c, danger_c, flow_ceiling_per_hour, flow_floor_per_hour, smallest_volume_l,
    feed_grams_per_day, lid_needed, water, source) values
    ('small-tropical', 'Small tropical community', 'tetras, rasboras, small catfish', 21, 25, 28, 32, 10, 4, 54, 1, false, 'fresh', 'small shoaling fish of warm water; the danger mark is the general one for tropical fish'),
    ('labyrinth', 'Betta and other labyrinth fish', 'betta, gouramis, paradise fish kept warm', 22, 26, 29, 32, 6, 2, 20, 0.2, true, 'fresh', 'long fins want slow water, and a lid keeps the air they breathe warm and the fish in'),
    ('livebearers-hard', 'Livebearers in hard water', 'guppies, platies, mollies, swordtails', 19, 24, 28, 32, 10, 4, 60, 1.5, false, 'fresh', 'hard, slightly alkaline water of middling warmth'),
    ('blackwater-soft', 'Soft-water, blackwater fish', 'wild-type tetras, pencilfish, dwarf cichlids of soft rivers', 23, 26, 29, 32, 6, 3, 60, 0.7, true, 'fresh', 'slow, warm, soft water; several of the group jump'),
    ('warm-cichlids', 'Warm-water cichlids', 'discus, angelfish kept with them, rams', 25, 28, 31, 33, 6, 3, 200, 5, false, 'fresh', 'fish of water warmer than most; the danger mark is quoted from memory'),
    ('african-lake', 'African lake cichlids', 'rock dwellers of the great rift lakes', 21, 25, 28, 31, null, 6, 200, 5, true, 'fresh', 'full stock and much filtration, hard alkaline water, chased fish jump; warm lake water holds little oxygen, hence the lower danger mark, quoted from memory'),
    ('goldfish-fancy', 'Fancy goldfish', 'double-tailed, round-bodied goldfish', 12, 20, 24, 30, 8, 4, 120, 3, false, 'fresh', 'cool water, heavy feeders, weak swimmers; the lowest and the danger mark are quoted from memory'),
    ('cool-stream', 'Cool-water stream fish', 'mountain minnows, hillstream loaches, danios', 14, 20, 23, 27, null, 8, 80, 0.7, true, 'fresh', 'cool, fast, oxygen-rich water; most jump; the danger mark is quoted from memory'),
    ('dwarf-shrimp', 'Dwarf shrimp', 'small algae-eating shrimp and snails', 15, 22, 26, 30, 8, 2, 15, 0.05, false, 'fresh', 'slow water and a guarded filter inlet; the lowest and the danger mark are quoted from memory'),
    ('marine-fish', 'Salt-water fish', 'clownfish, gobies, small damsels, without corals', 22, 25, 27, 31, null, 5, 120, 2, true, 'salt', 'steady warmth and strong movement, which pumps beside the filter add; many jump; the lowest and the danger mark are quoted from memory'),
    ('soft-coral-reef', 'Reef with soft corals', 'soft and button corals, a few small fish, shrimps', 22, 25, 27, 30, null, 5, 100, 1, false, 'salt', 'corals bleach in water that stays warm; an open top cools; the lowest and the danger mark are quoted from memory')`,
]

export const livestock: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of STATEMENTS) await sql.raw(statement).execute(db)
  },
}
