import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/** Text without case, accents and joined letters: "Œil-de-bœuf É" and "oeil-de-boeuf e" are one. Built in everywhere, no extension needed. */
const folded = (text: string): string =>
  `translate(replace(replace(replace(lower(regexp_replace(normalize(${text}, NFD), '[\\u0300-\\u036f]', '', 'g')),
    'ß', 'ss'), 'æ', 'ae'), 'œ', 'oe'), 'øłđð', 'oldd')`

/**
 * What a search looks through, in one line a product: its words, "100 w" also as "100w", its power, and its sides in whole inches and centimetres
 * as "=36", so that a figure finds a whole side and no part of one. It stands on its own, since a dump is read back with an empty search path.
 */
const SEARCH_TEXT = `create function product_search_text(kind text, name text, maker text, spec jsonb) returns text language sql immutable parallel safe as $$
  select ' ' || regexp_replace(words
    || ' ' || coalesce((select string_agg(replace(joined[1], ' ', ''), ' ') from regexp_matches(words, '([0-9]+ [a-z]{1,3})(?![a-z0-9])', 'g') as joined), '')
    || ' ' || coalesce((spec->>'powerW') || 'w', '')
    || ' ' || coalesce((select string_agg('=' || round(side.value::text::numeric / 25.4) || ' =' || round(side.value::text::numeric / 10), ' ' order by side.key)
        from jsonb_each(spec) as side where side.key in ('lengthMm', 'widthMm', 'heightMm', 'topLengthMm', 'topWidthMm')
        and jsonb_typeof(side.value) = 'number'), ''), '\\s+', ' ', 'g') || ' '
  from (select ${folded("name || ' ' || coalesce(maker, '') || ' ' || kind || ' ' || coalesce(spec->>'style', '') || ' ' || coalesce(spec->>'type', '')")} as words) as said $$`

/** Words of the catalog, each once, in pieces of three signs: what a misspelt word may have meant is found by the pieces they share. */
const WORDS = [
  `create function word_pieces(word text) returns text[] language sql immutable parallel safe as $$
    select array(select distinct substr('  ' || word || ' ', at, 3) from generate_series(1, length(word) + 1) as at) $$`,
  `create table search_word (
    word text constraint search_word_pk primary key,
    pieces text[] not null generated always as (word_pieces(word)) stored)`,
  'create index search_word_pieces on search_word using gin (pieces)',
  // A word that is here already is passed over, so that a copy of the table can be read back after the products that made it.
  `create function pass_over_known_word() returns trigger language plpgsql as $$
    begin
      if exists (select from search_word where word = new.word) then return null; end if;
      return new;
    end $$`,
  'create trigger search_word_once before insert on search_word for each row execute function pass_over_known_word()',
]

const NEW_WORDS = (from: string): string =>
  `insert into search_word (word) select distinct btrim(word, '.,;:()"!?') from ${from}, string_to_table(btrim(search_text), ' ') as word
    where length(btrim(word, '.,;:()"!?')) between 3 and 40 and word ~ '[[:alpha:]]' order by 1 on conflict do nothing`

export const search: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    const statements = [
      SEARCH_TEXT,
      'alter table product add column search_text text not null generated always as (product_search_text(kind, name, maker, spec)) stored',
      ...WORDS,
      `create function keep_search_words() returns trigger language plpgsql as $$ begin ${NEW_WORDS('fresh')}; return null; end $$`,
      'create trigger product_words_of_new after insert on product referencing new table as fresh for each statement execute function keep_search_words()',
      'create trigger product_words_of_changed after update on product referencing new table as fresh for each statement execute function keep_search_words()',
      NEW_WORDS('product'),
    ]
    for (const statement of statements) await sql.raw(statement).execute(db)
  },
}
