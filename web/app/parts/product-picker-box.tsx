import { keepPreviousData, useQuery } from '@tanstack/react-query'
import { useState, type ReactElement } from 'react'
import { Button } from 'react-aria-components/Button'
import { ComboBox } from 'react-aria-components/ComboBox'
import { FieldError } from 'react-aria-components/FieldError'
import { Input } from 'react-aria-components/Input'
import { Label } from 'react-aria-components/Label'
import { ListBox, ListBoxItem } from 'react-aria-components/ListBox'
import { Popover } from 'react-aria-components/Popover'
import { Text } from 'react-aria-components/Text'
import { KIND_NAMES } from '../../../core/catalog/kinds.ts'
import type { Product } from '../../../core/catalog/product.ts'
import { listProducts } from '../client/products.ts'
import type { ProductPickerProps } from './product-picker.tsx'
import { DownSign } from './signs.tsx'

/** As many as a list shows without becoming a second catalog: typing on is faster than scrolling. */
const SHOWN = 12

export default function ProductPickerBox({ label, kind, help, fault, except = [], onPick }: ProductPickerProps): ReactElement {
  const [typed, setTyped] = useState('')
  const found = useQuery({
    queryKey: ['products', 'pick', kind ?? '', typed.trim()],
    queryFn: ({ signal }) => listProducts({ kind, q: typed.trim(), limit: SHOWN }, signal),
    placeholderData: keepPreviousData,
  })
  const items = (found.data?.items ?? []).filter((product) => !product.archived && !except.includes(product.id))
  const nothing = found.isFetching
    ? 'Reading the catalog'
    : found.isError
      ? 'The catalog was not reached.'
      : 'Nothing in the catalog has that name.'
  return (
    <ComboBox
      className="picker field"
      items={items}
      inputValue={typed}
      onInputChange={setTyped}
      value={null}
      onChange={(id: unknown) => {
        const product = items.find((item) => item.id === id)
        if (!product) return
        setTyped('')
        onPick(product)
      }}
      allowsEmptyCollection
      menuTrigger="focus"
      isInvalid={Boolean(fault)}
    >
      <Label className="label">{label}</Label>
      <div className="entry">
        <Input placeholder="Name or maker" enterKeyHint="search" autoComplete="off" />
        <Button aria-label={`Show the list: ${label}`}>
          <DownSign />
        </Button>
      </div>
      {help && (
        <Text slot="description" className="help">
          {help}
        </Text>
      )}
      <FieldError className="fault">{fault}</FieldError>
      <Found nothing={nothing} />
    </ComboBox>
  )
}

function Found({ nothing }: { nothing: string }): ReactElement {
  return (
    <Popover className="picker-list" placement="bottom start" offset={2}>
      <ListBox renderEmptyState={() => <div className="picker-empty">{nothing}</div>}>
        {(product: Product) => (
          <ListBoxItem id={product.id} textValue={product.name}>
            <span>{product.name}</span>
            <span className="note">{KIND_NAMES[product.kind]}</span>
          </ListBoxItem>
        )}
      </ListBox>
    </Popover>
  )
}
