import { useEffect, useState, type ReactElement } from 'react'
import { watchSheets } from '../../src/office/read'
import { useRunner, useStore } from '../common/pane'
import { PreviewCard } from './PreviewCard'
import { RecipeCard } from './RecipeCard'
import './set.css'
import { Setter } from './setter'
import { WriteCard } from './WriteCard'

/** Set: what kind of set, the set that was drawn, and taking it to the workbook. */
export function SetArea(): ReactElement {
  const runner = useRunner()
  const [setter] = useState(() => new Setter(runner))
  const state = useStore(setter)
  useEffect(() => {
    void setter.look()
    const unwatch = setter.watch()
    const watching = watchSheets(() => void setter.look())
    watching.catch(runner.tell)
    return () => {
      unwatch()
      void watching.then((end) => end())
    }
  }, [setter, runner])
  return (
    <>
      <RecipeCard choices={state.choices} onChoose={setter.choose} />
      <PreviewCard setter={setter} state={state} />
      <WriteCard setter={setter} state={state} />
    </>
  )
}
