import { describe, expect, it } from 'vitest'
import { planMarking, planMastery } from '../../src/marksheet/marking/plan'
import { review } from '../../src/marksheet/marking/review'
import { historiesIn, judgeHistory, recordRows } from '../../src/marksheet/record/record'
import { reviewJson } from '../../src/marksheet/reports/json'
import { supportGroups } from '../../src/mastery/support'
import { reviewTable } from '../../src/files/table'
import { summaryOf } from '../../taskpane/mark/summary'
import { peopleInRecord, peopleOnSheet } from '../../taskpane/review/pupils/people'
import { diagnosedPupils } from '../../src/marksheet/reports/needs'
import { DEFAULT_MASTERY } from '../../src/mastery/settings'
import { bytesOf, matricesOf, WORKBOOKS } from '../marksheets'

const flaggedOf = (
  all: readonly { readonly name: string; readonly judgement: { readonly needsSupport: boolean } }[],
) =>
  all
    .filter(({ judgement }) => judgement.needsSupport)
    .map(({ name }) => name)
    .sort()

describe('one verdict for each pupil', () => {
  it.each(WORKBOOKS)('is the same wherever it is shown: %s', async (name) => {
    for (const matrix of await matricesOf(bytesOf(name))) {
      for (const found of review(matrix)) {
        const { pupils } = found
        const names = new Set(pupils.map((pupil) => pupil.name))
        if (names.size < pupils.length) continue
        const flagged = flaggedOf(pupils)
        const needs = new Map(pupils.map((pupil) => [pupil.name, pupil.judgement.need]))
        const people = peopleOnSheet(diagnosedPupils([found]), [], '')
        expect(flaggedOf(people)).toEqual(flagged)
        const told = reviewJson(found).pupils
        expect(
          told
            .filter(({ needsSupport }) => needsSupport)
            .map((pupil) => pupil.name)
            .sort(),
        ).toEqual(flagged)
        for (const pupil of told) expect(pupil.need).toEqual(needs.get(pupil.name))
        const groups = supportGroups(pupils, 6).flatMap((group) => group.pupils.map((pupil) => pupil.name))
        expect(groups.sort()).toEqual(flagged)
        const marked = summaryOf([found]).support.flatMap((group) => group.pupils.map((pupil) => pupil.name))
        expect(marked.sort()).toEqual(flagged)
        const notes = planMarking(matrix, [found]).notes.map(({ text }) => text)
        const mastery = planMastery([found]).rows.map((row) => row.map(({ text }) => text))
        const table = reviewTable([found])
        for (const pupil of pupils) {
          const { need, needsSupport } = pupil.judgement
          const shown = needsSupport ? need.sentence : ''
          expect(mastery.find(([first]) => first === pupil.name)?.[1]).toBe(shown)
          if (needsSupport) expect(notes).toContain(shown)
          if (needsSupport) expect(table).toContain(shown)
        }
        if (found.marked) continue
        const rows = recordRows(found, { date: '2026-11-27', class: '4H' })
        const kept = peopleInRecord(rows, '4H', DEFAULT_MASTERY)
        expect(flaggedOf(kept)).toEqual(flagged)
        for (const history of historiesIn(rows))
          expect(judgeHistory(history).need).toEqual(needs.get(history.pupil))
      }
    }
  })
})
