import { checkKit } from '../../core/catalog/kit.ts'
import type { ProductInput } from '../../core/catalog/schema.ts'
import { findLivestockGroup, listLivestockGroups } from '../../db/livestock-groups.ts'
import { getProducts } from '../../db/products.ts'
import type { Ctx } from '../context.ts'
import { invalid } from '../http/problem.ts'

/** Whether a kit may be stored; null where it may, and for everything that is no kit. `id` is null while it is new. */
export async function kitFault(c: Ctx, id: string | null, product: ProductInput) {
  if (product.kind !== 'kit') return null
  const parts = await getProducts(c.get('db'), product.parts.map((part) => part.productId)) // prettier-ignore
  const checked = checkKit({ id, name: product.name, parts: product.parts }, new Map(parts.map((part) => [part.id, part])))
  if (checked.ok) return null
  const index = product.parts.findIndex((part) => part.productId === checked.refusal.productId)
  return invalid(c, index < 0 ? 'parts' : `parts.${index}.productId`, checked.refusal.words)
}

/** Whether the livestock group that animals name is one of this place; null where it is, and for everything that names none. */
export async function groupFault(c: Ctx, product: ProductInput) {
  if (product.kind !== 'livestock' || product.spec.group === undefined) return null
  if ((await findLivestockGroup(c.get('db'), product.spec.group)) !== undefined) return null
  const names = (await listLivestockGroups(c.get('db'))).map(({ name }) => name)
  return invalid(c, 'spec.group', `There is no such livestock group here. Choose one of: ${names.join(', ')}.`)
}
