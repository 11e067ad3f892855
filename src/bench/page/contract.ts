import { CONTRACT, runContract } from '../contract'

// A script for a page with office.js: it offers the host contract there.
Object.assign(globalThis, { columnwiseContract: { CONTRACT, runContract } })
