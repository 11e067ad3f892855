/** Items by a key, groups in the order in which their keys first come up, items in their own order. */
export function groupBy<T, Key>(items: readonly T[], keyOf: (item: T) => Key): Map<Key, T[]> {
  const groups = new Map<Key, T[]>()
  for (const item of items) {
    const key = keyOf(item)
    const group = groups.get(key)
    if (group) group.push(item)
    else groups.set(key, [item])
  }
  return groups
}
