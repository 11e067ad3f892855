import type { ReactElement } from 'react'
import { rangesOf, type Ranges } from '../../src/marksheet/layout/correct'
import type { Marksheet, Orientation } from '../../src/marksheet/layout/find'
import { areaAddress, isEmpty, type Area, type Matrix } from '../../src/marksheet/layout/matrix'
import { valueAt } from '../../src/marksheet/marking/review'
import { Card } from '../common/Card'
import { counted } from '../common/words'
import { fromMarksheet } from '../home/atHome'
import { HomeFold } from '../home/HomeCard'
import { RangesForm } from './RangesForm'

const LAYOUTS: Readonly<Record<Orientation, string>> = {
  'pupils-down': 'pupils down the side, questions along the top',
  'pupils-across': 'pupils along the top, questions down the side',
  pairs: 'each pupil’s row holds questions with the answer on the right of each',
}

/** What was found as one marksheet, before anything is done with it: how many pupils, questions and answers, and where they stand. */
export function Found(props: {
  readonly marksheet: Marksheet
  readonly matrix: Matrix
  readonly sheetId: string
  readonly onCorrect: (ranges: Ranges) => void
  readonly onShow: (area: Area) => void
}): ReactElement {
  const { marksheet, matrix, sheetId, onCorrect, onShow } = props
  const { pupils, questions, orientation, area } = marksheet
  const cells = pupils.flatMap(({ answers }) => answers)
  const typed = cells.filter((cell) => !isEmpty(valueAt(matrix, cell))).length
  return (
    <Card title={`Marksheet in ${areaAddress(area)}`}>
      <p>
        {counted(pupils.length, 'pupil')}, {counted(questions.length, 'question')}, {typed} of{' '}
        {counted(cells.length, 'answer')} entered.
      </p>
      <p className="quiet">
        From {pupils[0]?.name} to {pupils.at(-1)?.name}; {LAYOUTS[orientation]}; first question{' '}
        <span className="sum">{questions[0]?.text}</span>.
      </p>
      <RangesForm
        key={areaAddress(area)}
        ranges={rangesOf(marksheet)}
        sheetId={sheetId}
        onCorrect={onCorrect}
        onShow={onShow}
      />
      <HomeFold atHome={fromMarksheet(marksheet)} whose={areaAddress(area)} />
    </Card>
  )
}
