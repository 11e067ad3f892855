import type { Question } from '../../arithmetic/question'
import type { DiagnosisSettings } from './settings'
import { slipsOf, writtenPlaces } from './slips'

/**
 * How likely what was typed for one question is, as logarithms: for each of the question's possible answers given by an
 * account, `ordinary[k]` with ordinary care, `careless[k]` without, and `nowAndThen[k]` where a pupil with ordinary care gives the right
 * answer as often as that one; `unsystematic` for a pupil without a pattern.
 */
export interface LogChances {
  readonly ordinary: Float64Array
  readonly careless: Float64Array
  readonly nowAndThen: Float64Array
  readonly unsystematic: number
}

/**
 * Prepares one question. `possible`: the different answers that accounts give to it, the right one first. The function returned
 * takes a canonical text and remembers what it has worked out.
 */
export function chancesFor(
  question: Question,
  possible: readonly string[],
  settings: DiagnosisSettings,
): (typed: string) => LogChances {
  const places = writtenPlaces(question)
  const slips = possible.map((answer) => slipsOf(answer, places, settings.swapped))
  const [right = ''] = possible
  const faulty = new Set(possible.slice(1))
  const seen = new Map<string, LogChances>()

  function stray(typed: string): number {
    const like = faulty.has(typed) ? settings.strayLikeFault / faulty.size : 0
    const figures = Math.max(typed.length, right.length)
    return like + (1 - settings.strayLikeFault) * 10 ** -figures
  }

  function work(typed: string): LogChances {
    const strays = stray(typed)
    const given = (slip: number) =>
      Float64Array.from(possible, (answer, index) => {
        const meant = (typed === answer ? 1 - settings.lapse : 0) + (typed === right ? settings.lapse : 0)
        const slipped = slips[index]?.get(typed) ?? 0
        return Math.log((1 - slip - settings.stray) * meant + slip * slipped + settings.stray * strays)
      })
    const slipped = settings.unsystematicSlip * (slips[0]?.get(typed) ?? 0)
    const wrong = slipped + (1 - settings.unsystematicSlip) * strays
    const { unsystematicRight } = settings
    const ordinary = given(settings.slip)
    const taught = Math.exp(ordinary[0] ?? -Infinity)
    return {
      ordinary,
      careless: given(settings.carelessSlip),
      nowAndThen: ordinary.map((log) => Math.log((taught + Math.exp(log)) / 2)),
      unsystematic: Math.log((typed === right ? unsystematicRight : 0) + (1 - unsystematicRight) * wrong),
    }
  }

  return (typed) => {
    const known = seen.get(typed)
    if (known) return known
    const chances = work(typed)
    seen.set(typed, chances)
    return chances
  }
}
