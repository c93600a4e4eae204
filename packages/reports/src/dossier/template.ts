import { lightTheme } from "../draw/index.ts";
import { tableType } from "./column-widths.ts";

/**
 * The page layout in Typst. It reads every word and number from data.json and every picture from its own file, so
 * nothing that a user wrote is ever read as Typst.
 */
export const template = `
#let data = json("data.json")
#let ink = rgb("${lightTheme.ink}")
#let ink2 = rgb("${lightTheme["ink-2"]}")
#let edge = rgb("${lightTheme["control-edge"]}")
#let hairline = rgb("${lightTheme.hairline}")
#let grades = (stops: rgb("${lightTheme.stops}"), care: rgb("${lightTheme.care}"), note: rgb("${lightTheme.note}"))

#set document(title: data.title, date: none)
#set page(
  paper: "a4",
  margin: (left: 18mm, right: 18mm, top: 14mm, bottom: 15mm),
  footer: context [
    #set text(8pt, fill: ink2)
    #data.footer #h(1fr) #counter(page).display() / #counter(page).final().first()
  ],
)
#set text(font: ("Ysabeau Office", "Libertinus Serif"), size: 9.5pt, fill: ink, lang: "en", number-type: "lining", number-width: "tabular")
#set par(leading: 0.55em, spacing: 0.75em)
#set block(spacing: 0.75em)
#set table(stroke: none, inset: (x: ${tableType.inset}pt, y: 2.2pt))

#let sign(grade) = box(baseline: 15%, {
  let color = grades.at(grade)
  let side = 7pt
  if grade == "stops" { rect(width: side, height: side, fill: color, stroke: 0.8pt + color) }
  else if grade == "care" {
    rect(width: side, height: side, stroke: 0.8pt + color, inset: 0pt, rect(width: 50%, height: 100%, fill: color, stroke: none))
  }
  else { rect(width: side, height: side, stroke: 0.8pt + color) }
})

#let caution(grade, body) = grid(
  columns: (12pt, 32pt, 1fr),
  sign(grade),
  text(fill: grades.at(grade), weight: 500, upper(grade.first()) + grade.slice(1)),
  body,
)

#let picture(content, width) = std.block(breakable: false, width: 100%, {
  text(8.5pt, weight: 500, content.caption)
  v(-3pt)
  image(content.file, width: width)
  v(-4pt)
  set par(leading: 0.4em)
  let origin = content.origin
  let words = origin.analysis + ", figure " + origin.figure + "; " + origin.inputs + "; digest " + origin.hash + "; again: "
  text(6.8pt, fill: ink2, words + text(font: "DejaVu Sans Mono", size: 5.8pt, origin.command))
})

#let listing(content) = std.block(breakable: content.rows.len() > 14, width: 100%, {
  text(8.5pt, weight: 500, content.caption)
  v(-2pt)
  set text(${tableType.size}pt)
  set par(leading: 0.4em)
  table(
    columns: content.columns.map(width => width * 1pt),
    align: (column, row) => (if content.numeric.at(column) { right } else { left }) + (if row == 0 { bottom } else { top }),
    table.hline(stroke: 0.6pt + edge),
    table.header(..content.head.map(cell => text(fill: ink2, weight: 500, cell))),
    table.hline(stroke: 0.4pt + edge),
    ..content.rows.flatten(),
    table.hline(stroke: 0.6pt + edge),
  )
  if "note" in content { v(-4pt); text(7pt, fill: ink2, content.note) }
})

#for block in data.blocks {
  if block.kind == "title" {
    v(6mm)
    text(26pt, weight: 500, block.text)
    v(-4mm)
    text(13pt, fill: ink2, block.subtitle)
    v(4mm)
  } else if block.kind == "heading" {
    let size = if block.level == 1 { 14pt } else { 10.5pt }
    v(if block.level == 1 { 5pt } else { 2pt })
    heading(level: block.level, text(size, weight: 500, block.text))
  } else if block.kind == "paragraph" {
    let looks = (text: 9.5pt, answer: 11.5pt, note: 8.5pt, small: 7.2pt)
    std.block(
      sticky: block.look == "answer",
      text(looks.at(block.look), fill: if block.look == "small" { ink2 } else { ink }, block.text),
    )
  } else if block.kind == "caution" {
    caution(block.grade, block.text)
  } else if block.kind == "figure" {
    picture(block, 100%)
  } else if block.kind == "pair" {
    grid(columns: (1fr, 1fr), column-gutter: 5mm, ..block.figures.map(each => picture(each, 100%)))
  } else if block.kind == "table" {
    listing(block)
  } else if block.kind == "citation" {
    par(hanging-indent: 1em, text(8pt, if block.text == block.key { block.key } else { block.key + ": " + block.text }))
  } else if block.kind == "page-break" {
    pagebreak(weak: true)
  }
}
`;
