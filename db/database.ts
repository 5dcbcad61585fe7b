// Generated from the migrated database by `npm run generate`. Do not edit.

import type { ColumnType, Generated, GeneratedAlways } from 'kysely'
import type { AuditAction, AuditSubjectKind } from '../core/audit/audit-actions.ts'
import type { AuditChanges } from '../core/audit/audit-changes.ts'
import type { BuildLetter, OwnedLine, QuoteDraft, QuoteState } from '../core/quote/draft.ts'
import type { Install } from '../core/install.ts'
import type { ReaderUnits } from '../core/units/quantity.ts'
import type { DeviceWord } from '../core/people/device.ts'
import type { Role } from '../core/people/roles.ts'
import type { DeliveryRule, Store, StoreRate } from '../core/catalog/store.ts'
import type { Kind } from '../core/catalog/kinds.ts'
import type { Spec } from '../core/catalog/spec.ts'
import type { Condition, Doubt, Sighting } from '../core/pricing/sighting.ts'
import type { RevisionDocument } from '../core/quote/revision.ts'
import type { QuoteAnswer, RevisionSummary } from '../core/quote/quote-view.ts'
import type { JobState, JsonObject } from '../core/jobs/job.ts'
import type { SaleTimeRule } from '../core/pricing/sale-time.ts'
import type { LearnedHead, ProductLearned } from '../core/pricing/outlook/learned.ts'
import type { WatchedCondition, WatchedRequirement } from '../core/pricing/watches/watch.ts'

/** Read as Date on both engines. */
export type Instant = ColumnType<Date, Date | string, Date | string>

export interface AuditEntryTable {
  id: Generated<string>
  at: ColumnType<Date, Date | string | undefined, Date | string>
  actor_id: string | null
  action: AuditAction
  subject_kind: AuditSubjectKind
  subject_id: string | null
  subject_name: string | null
  changes: AuditChanges
}

export interface CurrencyRateTable {
  currency: string
  seen_on: string
  rate: number
  source: string
  entered_by: string
  entered_at: ColumnType<Date, Date | string | undefined, Date | string>
}

export interface CustomerTable {
  id: Generated<string>
  name: string
  reach: Generated<string>
  note: Generated<string>
  erased_on: string | null
  created_at: ColumnType<Date, Date | string | undefined, Date | string>
  version: Generated<number>
  gear: Generated<OwnedLine[]>
}

export interface FeedTokenTable {
  person_id: string
  token_hash: string
  created_at: ColumnType<Date, Date | string | undefined, Date | string>
}

export interface ImportFaultTable {
  id: GeneratedAlways<number>
  job_id: string
  line: number
  heading: string | null
  message: string
}

export interface ImportRowTable {
  job_id: string
  line: number
  data: JsonObject
  action: 'create' | 'update' | 'same' | null
  target_id: string | null
  target_version: number | null
}

export interface InstallTable {
  one: Generated<boolean>
  name: string
  mode: Install['mode']
  currency: string
  country: string
  time_zone: string
  units: ReaderUnits
  contact: string
  paper: Install['paper']
  energy_price_minor: number
  circuit_voltage_v: number
  circuit_current_a: number
  version: Generated<number>
  least_saving_minor: Generated<number>
}

export interface JobTable {
  id: Generated<string>
  kind: string
  payload: JsonObject
  state: Generated<JobState>
  due_at: Instant
  started_by: string | null
  created_at: ColumnType<Date, Date | string | undefined, Date | string>
  leased_until: Instant | null
  takes: Generated<number>
  cancel_asked: Generated<boolean>
  phase: Generated<string>
  done: Generated<number>
  total: Generated<number>
  position: Generated<JsonObject>
  outcome: JsonObject | null
  ended_at: Instant | null
  deaths: Generated<number>
}

export interface KitPartTable {
  kit_id: string
  part_id: string
  kit_kind: Generated<string>
  part_kind: Kind
  quantity: number
  position: number
}

export interface ListPriceTable {
  product_id: string
  valid_from: string
  price_minor: number
  sale_minor: number | null
  sale_until: string | null
}

export interface LivestockGroupTable {
  id: string
  name: string
  examples: string
  lowest_c: number
  target_c: number
  highest_c: number
  danger_c: number
  flow_ceiling_per_hour: number | null
  flow_floor_per_hour: number
  smallest_volume_l: number
  feed_grams_per_day: number
  lid_needed: boolean
  water: 'fresh' | 'salt'
  source: string
  standing: 'edited' | 'own' | null
  version: Generated<number>
}

export interface NoticeTable {
  id: string
  watch_id: string
  person_id: string
  product_id: string
  store_id: string
  condition: Condition
  price_minor: number
  currency: string
  total_minor: number
  total_currency: string
  deal_key: string
  sighting_id: string | null
  seen_on: string
  deal_from: string
  deal_until: string
  last_day_stated: Generated<boolean>
  told_at: ColumnType<Date, Date | string | undefined, Date | string>
  seen_at: Instant | null
  answer: 'still_there' | 'gone' | null
  answered_at: Instant | null
}

export interface NoticeDeliveryTable {
  notice_id: string
  channel: 'email' | 'push'
  state: Generated<'waiting' | 'sent' | 'failed' | 'given_up'>
  tries: Generated<number>
  next_try_at: ColumnType<Date, Date | string | undefined, Date | string>
  reason: string | null
}

export interface OneUseLinkTable {
  token_hash: string
  id: Generated<string>
  purpose: 'first_manager' | 'invite' | 'new_password'
  role: Role
  name: string | null
  created_by: string | null
  expires_at: Instant
  used_at: Instant | null
  person_id: string | null
}

export interface OpenPricesTable {
  one: Generated<boolean>
  publishes: boolean
}

export interface OtherClubTable {
  id: Generated<string>
  address: string
  name: string
  added_at: ColumnType<Date, Date | string | undefined, Date | string>
  read_at: Instant | null
  tried_at: Instant | null
  etag: string | null
  fault: string | null
  left_out: Generated<number>
}

export interface OtherClubPriceTable {
  club_id: string
  origin_id: string
  store_key: string
  gtin: string | null
  product_name: string
  condition: Condition
  price_minor: number
  printed_regular_minor: number | null
  currency: string
  includes_tax: boolean
  seen_on: string
  last_day: string | null
}

export interface OtherClubStoreTable {
  club_id: string
  key: string
  name: string
  town: string | null
  country: string
  store_id: string | null
}

export interface PersonTable {
  id: Generated<string>
  name: string
  sign_in_name: string
  role: Role
  password_hash: string
  invited_by: string | null
  created_at: ColumnType<Date, Date | string | undefined, Date | string>
  disabled_at: Instant | null
  version: Generated<number>
  units: ReaderUnits | null
}

export interface PersonMailTable {
  person_id: string
  address: string
  confirmed_at: Instant | null
  token_hash: string | null
  token_ends_at: Instant | null
  last_letter_at: Instant | null
  failing_since: Instant | null
}

export interface PriceSnapshotTable {
  day: string
  method: number
  learned: LearnedHead
  made_at: ColumnType<Date, Date | string | undefined, Date | string>
}

export interface PriceSnapshotProductTable {
  day: string
  product_id: string
  learned: ProductLearned
  method: number
}

export interface PriceSnapshotReporterTable {
  day: string
  method: number
  reporter_id: string
  confirmed: number
  disputed: number
}

export interface PriceSummaryTable {
  product_id: string
  store_id: string
  sightings: number
  newest_id: string | null
  newest_on: string | null
  newest_at: Instant | null
  facts: string
  version: Generated<number>
}

export interface PriceSummaryMethodTable {
  only_one: Generated<boolean>
  method: number
}

export interface ProductTable {
  id: Generated<string>
  kind: Kind
  name: string
  maker: string | null
  gtin: string | null
  oversize: Generated<boolean>
  note: string | null
  spec: Spec
  archived: Generated<boolean>
  version: Generated<number>
  warranty_months: number | null
  search_text: GeneratedAlways<string>
}

export interface ProductPictureTable {
  product_id: string
  hash: string | null
  small: Uint8Array | null
  large: Uint8Array | null
  width: number | null
  height: number | null
  version: Generated<number>
}

export interface PushDeviceTable {
  id_hash: string
  person_id: string
  endpoint: string
  p256dh: string
  auth: string
  device: DeviceWord
  created_at: Instant
  failing_since: Instant | null
}

export interface QuoteTable {
  id: Generated<string>
  number: string | null
  state: Generated<QuoteState>
  advisor_id: string
  customer_id: string
  title: string
  draft: QuoteDraft
  latest_revision: Generated<number>
  stands_until: string | null
  link_version: Generated<number>
  saved_at: ColumnType<Date, Date | string | undefined, Date | string>
  version: Generated<number>
}

export interface QuoteAnswerTable {
  quote_id: string
  revision: number
  answer: QuoteAnswer['answer']
  letter: BuildLetter | null
  note: string
  at: Instant
}

export interface QuoteCounterTable {
  year: number
  last: number
}

export interface QuoteRevisionTable {
  quote_id: string
  revision: number
  document: RevisionDocument
  summary: Pick<RevisionSummary, 'totals'>
  issued_at: Instant
  issued_on: string
  stands_until: string
}

export interface RegionTable {
  id: Generated<string>
  name: string
  version: Generated<number>
}

export interface RegionStoreTable {
  region_id: string
  store_id: string
}

export interface SaidThereTable {
  person_id: string
  product_id: string
  store_id: string
  condition: Condition
  price_minor: number
  day: string
  sighting_id: string
}

export interface SaleTimeTable {
  id: Generated<string>
  name: string
  rule: SaleTimeRule
  length_days: number
  note: string | null
  version: Generated<number>
}

export interface SaleTimeStoreTable {
  sale_time_id: string
  store_id: string
}

export interface SearchWordTable {
  word: string
  pieces: GeneratedAlways<string[]>
}

export interface SessionTable {
  id_hash: string
  person_id: string
  created_at: Instant
  expires_at: Instant
  last_seen_at: Instant
  device: Generated<DeviceWord | ''>
  proven_at: Instant | null
}

export interface SetupTable {
  id: Generated<string>
  quote_id: string
  revision: number
  letter: BuildLetter
  link_version: Generated<number>
  started_on: string | null
  last_used_at: Instant | null
}

export interface SetupReadingTable {
  id: string
  setup_id: string
  taken_on: string
  ammonia_mg_l: number | null
  nitrite_mg_l: number | null
  nitrate_mg_l: number | null
  ph: number | null
  kh_degrees: number | null
  temperature_c: number | null
  note: string
  received_at: ColumnType<Date, Date | string | undefined, Date | string>
}

export interface SetupTickTable {
  setup_id: string
  step_id: string
  ticked_on: string
  on_word: Generated<boolean>
}

export interface SightingTable {
  id: string
  product_id: string
  store_id: string
  condition: Condition
  price_minor: number
  printed_regular_minor: number | null
  seen_on: string
  last_day: string | null
  evidence: Sighting['evidence']
  note: string | null
  reporter_id: string
  received_at: ColumnType<Date, Date | string | undefined, Date | string>
  doubt: Doubt | null
  withdrawn_at: Instant | null
  confirmations: Generated<number>
  disputes: Generated<number>
  accepted: GeneratedAlways<boolean>
  undo_id: string | null
  withdrawn_reason: string | null
  gone_on: string | null
  imported: Generated<boolean>
}

export interface SightingUndoTable {
  id: Generated<string>
  reporter_id: string
  undone_by: string
  at: Instant
  sightings: number
  reversed_at: Instant | null
  found_gone: Generated<number>
}

export interface SightingVoteTable {
  sighting_id: string
  person_id: string
  vote: 'confirm' | 'dispute' | null
  at: ColumnType<Date, Date | string | undefined, Date | string>
  gone_on: string | null
  gone_by: Generated<string[]>
}

export interface SignInAttemptTable {
  id: GeneratedAlways<number>
  key: string
  at: Instant
}

export interface StockItemTable {
  product_id: string
  stock_number: string | null
  stock_count: number | null
  version: Generated<number>
}

export interface StoreTable {
  id: Generated<string>
  name: string
  kind: Store['kind']
  town: string | null
  country: string
  subdivision: string | null
  time_zone: string
  tax_basis_points: number
  prices_include_tax: boolean
  delivery_taxed: boolean
  delivery: DeliveryRule
  return_days: number | null
  note: string | null
  archived: Generated<boolean>
  version: Generated<number>
  tax_name: string | null
  other_rates: Generated<StoreRate[]>
  delivery_rate: string | null
  warranty_months: number | null
  currency: string | null
  own: Generated<boolean>
}

export interface UndoneGoneTable {
  undo_id: string
  sighting_id: string
  gone_on: string
  gone_by: string[]
}

export interface WatchTable {
  id: string
  person_id: string
  product_id: string | null
  requirement: WatchedRequirement | null
  kind: GeneratedAlways<string | null>
  limit_minor: number | null
  currency: string
  by_day: string | null
  conditions: WatchedCondition[]
  region_id: string | null
  store_ids: Generated<string[]>
  created_at: ColumnType<Date, Date | string | undefined, Date | string>
  ended_at: Instant | null
  version: Generated<number>
  region_gone: Generated<boolean>
}

export interface WatchDueTable {
  id: GeneratedAlways<number>
  product_id: string | null
  watch_id: string | null
  store_id: string | null
}

export interface Database {
  audit_entry: AuditEntryTable
  currency_rate: CurrencyRateTable
  customer: CustomerTable
  feed_token: FeedTokenTable
  import_fault: ImportFaultTable
  import_row: ImportRowTable
  install: InstallTable
  job: JobTable
  kit_part: KitPartTable
  list_price: ListPriceTable
  livestock_group: LivestockGroupTable
  notice: NoticeTable
  notice_delivery: NoticeDeliveryTable
  one_use_link: OneUseLinkTable
  open_prices: OpenPricesTable
  other_club: OtherClubTable
  other_club_price: OtherClubPriceTable
  other_club_store: OtherClubStoreTable
  person: PersonTable
  person_mail: PersonMailTable
  price_snapshot: PriceSnapshotTable
  price_snapshot_product: PriceSnapshotProductTable
  price_snapshot_reporter: PriceSnapshotReporterTable
  price_summary: PriceSummaryTable
  price_summary_method: PriceSummaryMethodTable
  product: ProductTable
  product_picture: ProductPictureTable
  push_device: PushDeviceTable
  quote: QuoteTable
  quote_answer: QuoteAnswerTable
  quote_counter: QuoteCounterTable
  quote_revision: QuoteRevisionTable
  region: RegionTable
  region_store: RegionStoreTable
  said_there: SaidThereTable
  sale_time: SaleTimeTable
  sale_time_store: SaleTimeStoreTable
  search_word: SearchWordTable
  session: SessionTable
  setup: SetupTable
  setup_reading: SetupReadingTable
  setup_tick: SetupTickTable
  sighting: SightingTable
  sighting_undo: SightingUndoTable
  sighting_vote: SightingVoteTable
  sign_in_attempt: SignInAttemptTable
  stock_item: StockItemTable
  store: StoreTable
  undone_gone: UndoneGoneTable
  watch: WatchTable
  watch_due: WatchDueTable
}

/** Names of our own tables, where others may lie beside them. */
export const TABLES: ReadonlyArray<keyof Database> = [
  'audit_entry',
  'currency_rate',
  'customer',
  'feed_token',
  'import_fault',
  'import_row',
  'install',
  'job',
  'kit_part',
  'list_price',
  'livestock_group',
  'notice',
  'notice_delivery',
  'one_use_link',
  'open_prices',
  'other_club',
  'other_club_price',
  'other_club_store',
  'person',
  'person_mail',
  'price_snapshot',
  'price_snapshot_product',
  'price_snapshot_reporter',
  'price_summary',
  'price_summary_method',
  'product',
  'product_picture',
  'push_device',
  'quote',
  'quote_answer',
  'quote_counter',
  'quote_revision',
  'region',
  'region_store',
  'said_there',
  'sale_time',
  'sale_time_store',
  'search_word',
  'session',
  'setup',
  'setup_reading',
  'setup_tick',
  'sighting',
  'sighting_undo',
  'sighting_vote',
  'sign_in_attempt',
  'stock_item',
  'store',
  'undone_gone',
  'watch',
  'watch_due',
]
