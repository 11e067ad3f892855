import { useEffect, useState, type ReactElement } from 'react'
import type { Area } from '../../src/marksheet/layout/matrix'
import { diagnosing, type DiagnosedPupil } from '../../src/marksheet/reports/needs'
import type { Review } from '../../src/marksheet/marking/review'
import type { MasterySettings } from '../../src/mastery/settings'
import { Stopped } from '../../src/office/edit/errors'
import { inTurns } from '../../src/office/edit/work'
import { Reason } from '../common/Reason'

/** The fault named for each pupil, with its evidence in a line; a click goes to the answers. Nothing where none is named. */
export function Reasons({
  reviews,
  settings,
  onShow,
}: {
  readonly reviews: readonly Review[]
  readonly settings: MasterySettings
  readonly onShow: (area: Area) => void
}): ReactElement | null {
  const [named, setNamed] = useState<readonly DiagnosedPupil[]>([])
  useEffect(() => {
    const stop = new AbortController()
    inTurns(diagnosing(reviews, settings), stop).then(
      (pupils) => {
        if (!stop.signal.aborted)
          setNamed(pupils.filter(({ diagnosis }) => diagnosis.verdict === 'fault named'))
      },
      (error: unknown) => {
        if (!(error instanceof Stopped)) throw error
      },
    )
    return () => {
      stop.abort()
    }
  }, [reviews, settings])
  if (named.length === 0) return null
  return (
    <>
      <h3>Likeliest reasons</h3>
      <ul className="reasons">
        {named.map((pupil) => (
          <li key={`${pupil.review} ${pupil.index}`}>
            <Reason brief pupil={pupil} onShow={onShow} />
          </li>
        ))}
      </ul>
      <p className="quiet">
        A guess from the answers, for your own judgement. Review says what helps, and more.
      </p>
    </>
  )
}
