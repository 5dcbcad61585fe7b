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
import type { ProductPage } from '../client/products.ts'
import type { PickedProduct, ProductPickerProps } from './product-picker.tsx'
import { ProductThumb } from './product-thumb.tsx'
import { DownSign } from './signs.tsx'
import { useFound } from './use-found.ts'

export default function ProductPickerBox(props: ProductPickerProps): ReactElement {
  const { label, help, fault } = props
  const [typed, setTyped] = useState('')
  const { products, pictures, items, cut, busy, failed } = useFound(props, typed)
  const pick = (id: unknown): void => {
    const known = items.find((item) => item.id === id)
    const product = products.find((item) => item.id === id)
    if (known) setTyped('')
    if (product) props.onPick(product)
    else if (known) props.onPickKept?.(known)
  }
  return (
    <ComboBox
      className="picker field"
      items={items}
      inputValue={typed}
      onInputChange={setTyped}
      value={null}
      onChange={pick}
      allowsEmptyCollection
      menuTrigger="focus"
      isInvalid={Boolean(fault)}
    >
      <Label className="label">{label}</Label>
      <div className="entry">
        <Input placeholder="Name or maker" enterKeyHint="search" autoComplete="off" />
        <output className="note picker-busy">{busy && 'searching'}</output>
        <Button aria-label={`Show the list: ${label}`}>
          <DownSign />
        </Button>
      </div>
      {(help ?? cut) && (
        <Text slot="description" className="help">
          {cut ? 'No signal: only products that this phone knows already.' : help}
        </Text>
      )}
      <FieldError className="fault">{fault}</FieldError>
      <Found nothing={nothingWords(busy, cut, failed)} pictures={items.some(({ id }) => pictures[id] !== undefined) ? pictures : null} />
    </ComboBox>
  )
}

function nothingWords(reading: boolean, cut: boolean, failed: boolean): string {
  if (reading) return 'Reading the catalog'
  if (cut) return 'This phone knows no product of that name. Try again with a signal.'
  return failed ? 'The catalog was not reached.' : 'Nothing in the catalog has that name.'
}

/** With their pictures where any of them has one, so that all names stand in one line. */
function Found({ nothing, pictures }: { nothing: string; pictures: ProductPage['pictures'] | null }): ReactElement {
  return (
    <Popover className="picker-list" placement="bottom start" offset={2}>
      <ListBox dependencies={[pictures]} renderEmptyState={() => <div className="picker-empty">{nothing}</div>}>
        {(product: PickedProduct) => (
          <ListBoxItem id={product.id} textValue={product.name}>
            {pictures && <ProductThumb hash={pictures[product.id]} name="" />}
            <span>{product.name}</span>
            <span className="note">{KIND_NAMES[product.kind]}</span>
          </ListBoxItem>
        )}
      </ListBox>
    </Popover>
  )
}
