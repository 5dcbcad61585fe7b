import type { Kind } from './kinds.ts'
import type { SpecOf } from './spec.ts'

/** What a kit contains. A kit never contains a kit. */
export interface KitPart {
  productId: string
  quantity: number
}

interface ProductOf<K extends Kind> {
  id: string
  kind: K
  /** As a person would say it, the maker included: "Torvane 150 W". */
  name: string
  maker: string | null
  /** GTIN-8, -12, -13 or -14 with a right check digit; digits only. */
  gtin: string | null
  /** True for goods that a parcel service takes only at a surcharge. */
  oversize: boolean
  note: string | null
  /** The maker's own; absent or null: not stated. */
  warrantyMonths?: number | null
  spec: SpecOf[K]
  /** Only a kit has parts. */
  parts: KitPart[]
  /** An archived product stays in old quotes and takes no new sightings. */
  archived: boolean
  version: number
}
export type Product = { [K in Kind]: ProductOf<K> }[Kind]
