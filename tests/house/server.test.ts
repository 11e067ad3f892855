import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { parseXml, type XmlElement } from './xml'

/** A header that is set, or taken away (null), for all files or for some. */
type Header = readonly [files: string, name: string, value: string | null]

const read = (name: string) => readFileSync(`taskpane/server/${name}`, 'utf8')

/** The headers of an Apache file, in the order of the alphabet. */
function ofApache(text: string): Header[] {
  let files = 'all'
  const headers = text.split('\n').flatMap((line): Header[] => {
    const opened = /^\s*<Files(?:Match)? "(.+)">/.exec(line)?.[1]
    if (opened !== undefined) files = opened === '\\.png$' ? 'assets' : opened
    if (/^\s*<\/Files/.test(line)) files = 'all'
    const [, verb, name = '', value = ''] =
      /^\s*Header (?:always )?(set|unset) (\S+)(?: "(.*)")?$/.exec(line) ?? []
    return verb === undefined ? [] : [[files, name, verb === 'set' ? value : null]]
  })
  return sorted(headers)
}

/** The headers of an IIS file; one that is taken away in order to be set is set. */
function ofIis(root: XmlElement): Header[] {
  const named = ({ children }: XmlElement, name: string) => children.filter((child) => child.name === name)
  const within = (parent: XmlElement, files: string): Header[] =>
    named(parent, 'system.webServer')
      .flatMap((each) => named(each, 'httpProtocol'))
      .flatMap((each) => named(each, 'customHeaders'))
      .flatMap(({ children }) => {
        const added = children.filter(({ name }) => name === 'add').map(({ attributes }) => attributes)
        const removed = children
          .filter(({ name }) => name === 'remove')
          .map(({ attributes }) => attributes.name)
        return [
          ...added.map(({ name = '', value = '' }): Header => [files, name, value]),
          ...removed
            .filter((name) => added.every((each) => each.name !== name))
            .map((name = ''): Header => [files, name, null]),
        ]
      })
  const places = named(root, 'location').flatMap((place) => within(place, place.attributes.path ?? ''))
  return sorted([...within(root, 'all'), ...places])
}

const sorted = (headers: readonly Header[]) =>
  [...new Map(headers.map((header) => [header.join(' '), header])).values()].sort((a, b) =>
    a.join(' ') < b.join(' ') ? -1 : 1,
  )

describe('the settings for a web server', () => {
  it('let Excel frame the pages, mix no versions, and let Excel read the list of functions', () => {
    expect(ofApache(read('.htaccess'))).toEqual([
      ['all', 'Cache-Control', 'no-cache'],
      ['all', 'Referrer-Policy', 'no-referrer'],
      ['all', 'X-Content-Type-Options', 'nosniff'],
      ['all', 'X-Frame-Options', null],
      ['assets', 'Cache-Control', 'public, max-age=86400'],
      ['functions.json', 'Access-Control-Allow-Origin', '*'],
    ])
  })

  it('say the same for Apache and for IIS', () => {
    expect(ofIis(parseXml(read('web.config')))).toEqual(ofApache(read('.htaccess')))
  })
})
