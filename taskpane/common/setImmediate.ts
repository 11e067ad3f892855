/**
 * Stands in the pane's scripts for the package `setimmediate`, of which JSZip makes use: calls a function once what runs now has ended. The
 * package would also make a program of a text, which no script of the pane may contain (tests/house/safety.test.ts).
 */
const waiting: (() => void)[] = []
const { port1, port2 } = new MessageChannel()

port1.onmessage = () => {
  waiting.shift()?.()
}

Object.assign(globalThis, {
  setImmediate: (call: () => void) => {
    waiting.push(call)
    port2.postMessage(null)
  },
})
