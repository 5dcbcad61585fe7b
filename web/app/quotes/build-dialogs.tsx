import { useId, type ReactElement } from 'react'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { TextField } from '../parts/field.tsx'
import { useDesk, useDialog } from './desk-context.ts'
import { focusHead } from './desk-focus.ts'
import { MOST_BUILDS } from './draft-edit.ts'
import { useCopyBuild } from './use-copy-build.ts'

/** Naming, copying and removing a build. */
export function BuildDialogs(): ReactElement {
  return (
    <>
      <DescribeDialog />
      <RemoveDialog />
    </>
  )
}

function DescribeDialog(): ReactElement {
  const { open, state, builds, edit } = useDesk()
  const { shown, close } = useDialog('describe')
  const buildId = shown?.buildId ?? null
  const build = state.draft.builds.find((one) => one.id === buildId)
  const { letter, name: called = '' } = builds.find((one) => one.id === buildId) ?? {}
  const full = builds.length >= MOST_BUILDS
  const copyBuild = useCopyBuild()
  const formId = useId()
  const copy = (): void => {
    close()
    if (build) copyBuild(build.id)
  }
  return (
    <Dialog
      open={build !== undefined}
      title={`What is build ${letter ?? ''} called?`}
      onClose={close}
      actions={
        <Button type="submit" form={formId}>
          Done
        </Button>
      }
    >
      {build && (
        <form
          id={formId}
          className="form"
          onSubmit={(event) => {
            event.preventDefault()
            close()
          }}
        >
          <TextField
            label="Name"
            help="Left empty, it is called after its tank."
            placeholder={called}
            value={build.name}
            maxLength={80}
            onChange={(name) => edit({ do: 'describe_build', buildId: build.id, change: { name } })}
          />
          <TextField
            label="Why this one"
            help="One sentence for the customer: what this build is good for."
            value={build.why}
            maxLength={300}
            onChange={(why) => edit({ do: 'describe_build', buildId: build.id, change: { why } })}
          />
          <div className="build-acts">
            <Button small off={full} onClick={copy}>
              Make a copy
            </Button>
            <Button small off={builds.length === 1} onClick={() => open({ at: 'remove', buildId: build.id })}>
              Remove this build
            </Button>
            {full && <span className="reason">A quote holds four builds at most.</span>}
            {builds.length === 1 && <span className="reason">A quote needs one build at least.</span>}
          </div>
        </form>
      )}
    </Dialog>
  )
}

function RemoveDialog(): ReactElement {
  const { builds, edit } = useDesk()
  const { shown, close } = useDialog('remove')
  const build = builds.find((one) => one.id === shown?.buildId)
  const remove = (): void => {
    if (build) edit({ do: 'remove_build', buildId: build.id })
    close()
    const left = builds.find((one) => one !== build)
    if (left) focusHead(left.id)
  }
  return (
    <Dialog
      open={build !== undefined}
      title={`Remove build ${build?.letter ?? ''}${build?.name ? `, ${build.name}` : ''}?`}
      onClose={close}
      actions={
        <>
          <Button onClick={close}>Keep it</Button>
          <Button look="main" onClick={remove}>
            Remove build {build?.letter}
          </Button>
        </>
      }
    >
      <p>Its lines go with it; this cannot be undone. Versions that were issued keep it.</p>
    </Dialog>
  )
}
