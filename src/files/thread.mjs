/** Starts a program of TypeScript in a thread, which does not take over the loader of the main one; `workerData` is its address. */
import { workerData } from 'node:worker_threads'
import { register } from 'tsx/esm/api'

register()
await import(workerData)
