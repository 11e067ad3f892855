import type { Recipe } from '../../src/items/recipes'
import { Store } from '../common/store'
import { FIRST_RECIPE } from './RecipeChoice'

/** The objective that the lesson is for, also shown at the lesson's door while the lesson's own code is not loaded yet. */
class Objective extends Store<{ readonly recipe: Recipe }> {
  readonly choose = (recipe: Recipe): void => {
    this.set({ recipe })
  }
}

export const OBJECTIVE = new Objective({ recipe: FIRST_RECIPE })
