import type { ReactElement } from 'react'
import { shapeWords } from '../../../core/catalog/tank-shape.ts'
import type { WorkedBuild } from '../../../core/quote/revision.ts'
import { saySize } from '../../../core/units/say.ts'
import { tankDrawings } from '../../plots/tank-drawing.ts'
import { Button } from '../parts/button.tsx'
import { Svg } from '../parts/svg.tsx'
import { columnClass } from './column-class.ts'
import { useDesk } from './desk-context.ts'
import { focusHead } from './desk-focus.ts'
import { MOST_BUILDS } from './draft-edit.ts'
import { newBuild } from './new-build.ts'
import { useCopyBuild } from './use-copy-build.ts'
import { useSuggest } from './use-suggest.ts'

/** Widest column the drawing is made for; it shrinks with the column, all of them alike, so that one scale stays one scale. */
const DRAWING_WIDTH = 196

/** The heads of the columns: tank to one scale, letter, name, why; a press chooses the build whose report is shown. */
export function BuildHeads(): ReactElement {
  const { builds, shown, chosen, choose, edit, reader, locked } = useDesk()
  const tanks = builds.map((build) => build.drawing && { ...build.drawing, letter: build.letter })
  const drawings = tankDrawings(tanks, { id: 'desk-tank', reader, width: DRAWING_WIDTH, stand: 'cut' })
  const add = (): void => {
    const build = newBuild()
    edit({ do: 'add_build', build })
    choose(build.id)
    focusHead(build.id)
  }
  return (
    <thead>
      <tr>
        <td>
          {builds.length < MOST_BUILDS && !locked && (
            <Button small look="plain" className="add-build" aria-keyshortcuts="W" onClick={add}>
              Add a build
            </Button>
          )}
        </td>
        {shown.map((build) => (
          <th key={build.id} scope="col" className={columnClass(build.id === chosen.id)}>
            <button
              type="button"
              className="pick"
              data-build={build.id}
              aria-keyshortcuts={build.letter}
              aria-pressed={build.id === chosen.id}
              onClick={() => choose(build.id)}
            >
              <Elevation markup={drawings[builds.indexOf(build)]} />
              <span className="name">
                <b className="letter">{build.letter}</b> {build.drawing === null ? 'No tank yet' : build.name}
                {build.suggested && <span className="suggested">we suggest</span>}
              </span>
              <span className="dim">{sayTank(build, reader)}</span>
            </button>
            {build.why && <p className="why">{build.why}</p>}
            {!locked && <HeadActs build={build} />}
          </th>
        ))}
      </tr>
    </thead>
  )
}

/** What is done with one build; the keys are those of the chosen one. */
function HeadActs({ build }: { build: WorkedBuild }): ReactElement {
  const { builds, chosen, open } = useDesk()
  const copy = useCopyBuild()
  const suggest = useSuggest()
  const keyed = (key: string) => (build.id === chosen.id ? { 'aria-keyshortcuts': key } : {})
  const of = <span className="sr"> build {build.letter}</span>
  return (
    <div className="head-acts">
      <Button small look="plain" onClick={() => open({ at: 'describe', buildId: build.id })}>
        Name or remove{of}
      </Button>
      {builds.length < MOST_BUILDS && (
        <Button small look="plain" {...keyed('K')} onClick={() => copy(build.id)}>
          Copy{of}
        </Button>
      )}
      {!build.suggested && build.drawing !== null && (
        <Button small look="plain" {...keyed('S')} onClick={() => suggest(build.id)}>
          Suggest{of}
        </Button>
      )}
    </div>
  )
}

function Elevation({ markup }: { markup: string | undefined }): ReactElement {
  return markup ? <Svg markup={markup} className="elevation" inline /> : <span className="elevation none">no tank yet</span>
}

function sayTank(build: WorkedBuild, reader: Parameters<typeof saySize>[1]): string {
  if (!build.drawing) return 'no tank yet'
  const { lengthMm, widthMm, heightMm, style, plan } = build.drawing
  const kit = build.rows.some((row) => row.answer === 'kit') && 'kit'
  return `${[kit, shapeWords(plan?.form), style].filter(Boolean).join(', ')}, ${saySize([lengthMm, widthMm, heightMm], reader)}`
}
