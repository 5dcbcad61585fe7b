import { SLOT_NAMES, SLOT_OF, type Kind, type Slot } from '../../../core/catalog/kinds.ts'
import { sayDate } from '../../../core/dates.ts'
import { sayMoney } from '../../../core/money.ts'
import { resolveConditions } from '../../../core/quote/conditions.ts'
import { BUILD_LETTERS, type Build, type BuildLine, type QuoteDraft } from '../../../core/quote/draft.ts'
import type { OurService } from '../../../core/quote/our-service.ts'
import { sayDeposit, sayDiscount } from '../../../core/quote/terms.ts'
import type { QuoteInputs } from '../../../core/quote/revision.ts'
import { EXACT_FIELDS } from './exact-fields.ts'
import { LOOK_WORDS, sayAnimals, sayBig, sayExact } from './need-words.ts'
import { SYSTEM_WORDS } from '../parts/units-fields.tsx'
import { sameValue } from './same-value.ts'

export interface Difference {
  /** "Budget", "Build B, Heat". */
  where: string
  mine: string
  theirs: string
}

type Names = Pick<QuoteInputs, 'products' | 'stores' | 'install'>
type Said = Map<string, string>

/**
 * What two drafts say differently, in words a person can choose by.
 *
 * @example compareDrafts(mine, theirs, inputs) // [{ where: 'Budget', mine: '$600.00', theirs: '$700.00' }]
 */
export function compareDrafts(mine: QuoteDraft, theirs: QuoteDraft, names: Names): Difference[] {
  const [left, right] = [sayDraft(mine, names), sayDraft(theirs, names)]
  return [...new Set([...left.keys(), ...right.keys()])]
    .map((where) => ({ where, mine: left.get(where) ?? 'nothing', theirs: right.get(where) ?? 'nothing' }))
    .filter((row) => !sameValue(row.mine, row.theirs))
}

function sayDraft(draft: QuoteDraft, names: Names): Said {
  const { need } = draft
  const { install, stores } = names
  const storeName = (id: string) => stores.find((store) => store.id === id)?.name ?? 'a store that is gone'
  const conditions = resolveConditions(need, install)
  return new Map([
    ['Title', draft.title || 'none'],
    ['Size', sayBig(need, install.units)],
    ['Place', need.place || 'none'],
    ['Animals', sayAnimals(need, install)],
    ['Look', LOOK_WORDS[need.look]],
    ['Stores', need.storeIds.length === 0 ? 'any' : need.storeIds.map(storeName).join(', ')],
    ['Budget', need.budgetMinor === null ? 'none' : sayMoney(need.budgetMinor, install.currency)],
    ['By', need.byDate === null ? 'no hurry' : sayDate(need.byDate)],
    ['A week’s wait', need.weekWaitMinor ? `worth ${sayMoney(need.weekWaitMinor, install.currency)}` : 'worth nothing'],
    ...EXACT_FIELDS.map((field): [string, string] => [field.label, sayExact(field, need, conditions, install.units).words]),
    ['Stands until', draft.standsUntil === null ? 'not set' : sayDate(draft.standsUntil)],
    ['Figures on paper', draft.units === undefined ? 'as everyone here' : SYSTEM_WORDS[draft.units]],
    [
      'Discount',
      draft.discount ? sayDiscount(draft.discount, install.currency, draft.discount.storeId && storeName(draft.discount.storeId)) : 'none',
    ],
    ['Deposit', draft.deposit ? sayDeposit(draft.deposit, install.currency) : 'none'],
    ['Note', draft.note || 'none'],
    ['We suggest', saySuggestion(draft)],
    ...draft.builds.flatMap((build, index) => sayBuild(build, BUILD_LETTERS[index] ?? '', names)),
  ])
}

function saySuggestion({ suggestion, builds }: QuoteDraft): string {
  const build = builds.find((one) => one.id === suggestion?.buildId)
  return build && suggestion ? [build.name, suggestion.reason].filter(Boolean).join(': ') : 'none'
}

function sayBuild(build: Build, letter: string, names: Names): Array<[string, string]> {
  const lines = new Map<string, string[]>()
  for (const line of build.lines) {
    const { where, words } = sayLine(line, names)
    lines.set(where, [...(lines.get(where) ?? []), words])
  }
  return [
    [`Build ${letter}, name`, [build.name, build.why].filter(Boolean).join(': ') || 'none'],
    ...(build.services?.length ? [[`Build ${letter}, our services`, sayServices(build.services, names)] as [string, string]] : []),
    ...[...lines].map(([where, words]): [string, string] => [`Build ${letter}, ${where}`, words.join('; ')]),
  ]
}

const sayServices = (services: OurService[], { install }: Names): string =>
  services.map(({ name, quantity, priceMinor }) => `${quantity} × ${name}, ${sayMoney(priceMinor, install.currency)} each`).join('; ')

function sayLine(line: BuildLine, { products, stores }: Names): { where: string; words: string } {
  if (line.answer === 'not_needed') return { where: SLOT_NAMES[line.slot], words: `not needed: ${line.reason}` }
  const product = products.find((one) => one.id === line.productId)
  const count = line.quantity === 1 ? '' : `${line.quantity} × `
  const beside = line.besideKit ? ', beside the kit’s' : ''
  if (line.answer === 'owned')
    return { where: SLOT_NAMES[line.slot], words: `already owned: ${count}${product?.name ?? line.description}${beside}` }
  const store = line.storeId === null ? '' : `, from ${stores.find((one) => one.id === line.storeId)?.name ?? 'a store that is gone'}`
  const where = product ? SLOT_NAMES[slotOf(product.kind)] : 'a product that is gone'
  return { where, words: `${count}${product?.name ?? 'a product that is gone'}${store}${beside}${line.note ? `, ${line.note}` : ''}` }
}

const slotOf = (kind: Kind): Slot => (kind === 'kit' ? 'hold_water' : SLOT_OF[kind])
