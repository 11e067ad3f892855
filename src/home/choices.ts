/** What a home workbook says of an answer: nothing; right or look again; or look again with a hint. */
export const FEEDBACK = ['none', 'look-again', 'hints'] as const
export type Feedback = (typeof FEEDBACK)[number]

/** How questions stand in a home workbook: in a line each, or set out on squared cells beside it as well. */
export const PAPERS = ['lines', 'squares'] as const
export type Paper = (typeof PAPERS)[number]

/** When feedback is given: after each answer, or once all are in. */
export const WHENS = ['each', 'all'] as const
export type When = (typeof WHENS)[number]

/** What a teacher chooses for home workbooks. */
export interface HomeChoices {
  readonly feedback: Feedback
  readonly when: When
  readonly paper: Paper
}

export const HOME_CHOICES: HomeChoices = { feedback: 'look-again', when: 'each', paper: 'lines' }
