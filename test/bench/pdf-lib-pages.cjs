// what plotting is compared with: load pdf-lib, write as many pages of one stroke each, save
const { PDFDocument, rgb } = require('pdf-lib')
const { writeFileSync } = require('node:fs')

const [count, out] = [Number(process.argv[2]), process.argv[3]]
PDFDocument.create()
  .then((document) => {
    for (let i = 0; i < count; i++) {
      const page = document.addPage([595.2756, 841.8898])
      page.drawLine({ start: { x: 50, y: 50 }, end: { x: 500, y: 700 }, thickness: 1.4, color: rgb(0, 0, 0) })
    }
    return document.save()
  })
  .then((bytes) => writeFileSync(out, bytes))
