import type { ReactElement } from 'react'
import type { Area } from '../../src/marksheet/layout/matrix'
import { diagnosedPupils } from '../../src/marksheet/reports/needs'
import type { Review } from '../../src/marksheet/marking/review'
import { Reason } from '../common/Reason'

/** The fault named for each pupil, with its evidence in a line; a click goes to the answers. Nothing where none is named. */
export function Reasons({
  reviews,
  onShow,
}: {
  readonly reviews: readonly Review[]
  readonly onShow: (area: Area) => void
}): ReactElement | null {
  const named = diagnosedPupils(reviews).filter(({ diagnosis }) => diagnosis.verdict === 'fault named')
  if (named.length === 0) return null
  return (
    <>
      <h3>Likeliest reasons</h3>
      <ul className="reasons">
        {named.map((pupil) => (
          <li key={`${pupil.review} ${pupil.index}`}>
            <Reason pupil={pupil} onShow={onShow} />
          </li>
        ))}
      </ul>
      <p className="quiet">
        A guess from the answers, for your own judgement. Review says what helps, and more.
      </p>
    </>
  )
}
