/**
 * How a school writes the column methods. `exchange`: a ten received in a subtraction is a small 1 beside the digit, or the new number
 * is written above it. `carry`: a carried ten stands above the top number, or below the answer.
 */
export interface Notation {
  readonly exchange: 'beside' | 'above'
  readonly carry: 'above' | 'below'
}

/** As the curriculum's own examples are printed (Department for Education 2013, Mathematics Appendix 1; from memory). */
export const NOTATION: Notation = { exchange: 'beside', carry: 'below' }
