// Reads cut files with one of two npm packages and writes what is in them as
// JSON, in the same form as dxf_check.py. It shares no code with the program
// that wrote the files. Usage: node dxf_check.js FOLDER PACKAGE FILE…
'use strict'
const fs = require('fs')
const path = require('path')
const { createRequire } = require('module')

const [folder, reader, ...files] = process.argv.slice(2)
const load = createRequire(path.join(folder, 'here.js'))

// measure finds area by Green's theorem and length.
function measure (places, closed) {
  let area = 0
  let length = 0
  const n = places.length
  for (let i = 0; i < (closed ? n : n - 1); i++) {
    const a = places[i]
    const b = places[(i + 1) % n]
    const bulge = a.bulge || 0
    const dx = b.x - a.x
    const dy = b.y - a.y
    if (bulge === 0) {
      area += (a.x * b.y - b.x * a.y) / 2
      length += Math.hypot(dx, dy)
      continue
    }
    const sweep = 4 * Math.atan(bulge)
    const reach = 1 / (2 * Math.tan(sweep / 2)) // from the chord's middle to the centre, in chords
    const cx = (a.x + b.x) / 2 - dy * reach
    const cy = (a.y + b.y) / 2 + dx * reach
    const radius = Math.hypot(a.x - cx, a.y - cy)
    const start = Math.atan2(a.y - cy, a.x - cx)
    const end = start + sweep
    area += (radius * radius * sweep + cx * radius * (Math.sin(end) - Math.sin(start)) -
      cy * radius * (Math.cos(end) - Math.cos(start))) / 2
    length += radius * Math.abs(sweep)
  }
  return { area, length, closed }
}

function entity (found, type, layer, e) {
  switch (type) {
    case 'CIRCLE': {
      const c = e.center || e
      const radius = e.radius === undefined ? e.r : e.radius
      found.circles.push({ layer, x: c.x, y: c.y, diameter: 2 * radius })
      break
    }
    case 'POLYLINE':
    case 'LWPOLYLINE':
      found.paths.push({ layer, ...measure(e.vertices, Boolean(e.shape || e.closed)) })
      break
    case 'LINE':
      found.paths.push({ layer, ...measure(e.vertices || [e.start, e.end], false) })
      break
    case 'TEXT':
      found.texts.push(e.text || e.string)
      break
    default:
      found.faults.push('entity ' + type)
  }
}

function contents (file) {
  const text = fs.readFileSync(file, 'utf8')
  const found = { version: '', units: 4, faults: [], paths: [], circles: [], texts: [] }
  if (reader === 'dxf-parser') {
    const module = load('dxf-parser')
    const drawing = new (module.DxfParser || module.default || module)().parseSync(text)
    found.version = drawing.header.$ACADVER
    found.units = drawing.header.$INSUNITS === undefined ? 4 : drawing.header.$INSUNITS
    for (const e of drawing.entities) entity(found, e.type, e.layer, e)
  } else {
    const { parseString } = load('dxf')
    const drawing = parseString(text)
    found.version = (text.match(/AC10\d\d/) || [''])[0]
    found.units = drawing.header.insUnits === undefined ? 4 : drawing.header.insUnits
    for (const e of drawing.entities) entity(found, e.type, e.layer, e)
  }
  return found
}

process.stdout.write(JSON.stringify(files.map(contents)))
