import { lightTheme } from "../draw/index.ts";
import { cellInset } from "./column-widths.ts";

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
#set table(stroke: none, inset: (x: ${cellInset}pt, y: 2.2pt))

#let sign(grade) = box(baseline: 15%, {
  let color = grades.at(grade)
  let side = 7pt
  if grade == "stops" { rect(width: side, height: side, fill: color, stroke: 0.8pt + color) }
  else if grade == "care" {
    rect(width: side, height: side, stroke: 0.8pt + color, inset: 0pt, rect(width: 50%, height: 100%, fill: color, stroke: none))
  }
  else { rect(width: side, height: side, stroke: 0.8pt + color) }
})

// Sizes of type in a section: all as designed, or all smaller by one factor where a page would overflow.
#let size(points, scale) = points * scale * 1pt

#let caution(grade, body, scale) = grid(
  columns: (12pt, 32pt, 1fr),
  sign(grade),
  text(size(9.5, scale), fill: grades.at(grade), weight: 500, upper(grade.first()) + grade.slice(1)),
  text(size(9.5, scale), body),
)

#let picture(content, scale) = std.block(breakable: false, width: 100%, {
  text(size(8.5, scale), weight: 500, content.caption)
  v(-3pt)
  image(content.file, width: 100%)
  v(-4pt)
  set par(leading: 0.4em)
  let origin = content.origin
  let words = origin.analysis + ", figure " + origin.figure + "; " + origin.inputs + "; digest " + origin.hash + "; again: "
  text(size(6.8, scale), fill: ink2, words + text(font: "DejaVu Sans Mono", size: size(5.8, scale), origin.command))
})

#let panel(content, scale) = std.block(breakable: false, width: 100%, {
  set par(leading: 0.4em)
  text(size(7.4, scale), content.caption)
  v(-4pt)
  image(content.file, width: 100%)
})

#let cells(content) = content.rows.map(row => {
  if row.len() == 1 and content.columns.len() > 1 {
    (table.cell(colspan: content.columns.len(), align: left, text(fill: ink2, weight: 500, row.first())),)
  } else { row }
}).flatten()

#let listing(content, scale) = std.block(breakable: content.rows.len() > 26, width: 100%, {
  text(size(8.5, scale), weight: 500, content.caption)
  v(-2pt)
  set text(content.typeSize * 1pt, top-edge: 0.8em, bottom-edge: -0.22em)
  set par(leading: 0pt)
  table(
    columns: content.columns.map(width => width * 1pt),
    align: (column, row) => (if content.numeric.at(column) { right } else { left }) + (if row == 0 { bottom } else { top }),
    inset: (column, row) => (x: ${cellInset}pt, y: 0.7pt * scale, top: if row == 1 { 1.6pt } else { 0.7pt * scale }),
    table.hline(stroke: 0.6pt + edge),
    table.header(..content.head.map(cell => text(fill: ink2, weight: 500, cell))),
    table.hline(stroke: 0.4pt + edge),
    ..cells(content),
    table.hline(stroke: 0.6pt + edge),
  )
  if "note" in content { v(-4pt); text(size(7, scale), fill: ink2, content.note) }
})

#let reference(item) = grid(columns: (17pt, 1fr), item.mark, item.text)

#let references(items, scale) = {
  set text(size(7.4, scale))
  set par(leading: 0.4em)
  let half = calc.ceil(items.len() / 2)
  let column(part) = stack(spacing: 3.5pt, ..part.map(reference))
  grid(columns: (1fr, 1fr), column-gutter: 6mm, column(items.slice(0, half)), column(items.slice(half)))
}

#let lead(block) = if "lead" in block { text(weight: "bold", block.lead + ".") + " " }

#let paragraph(block, scale) = {
  let looks = (text: 9.5, question: 9.5, answer: 11.5, note: 8.5, compact: 8, small: 7.2)
  let quiet = ("small", "question")
  set par(leading: 0.45em) if block.look == "compact" or block.look == "small"
  std.block(
    sticky: block.look == "answer" or block.look == "question" or block.at("withNext", default: false),
    above: (if block.look == "question" { 10pt } else { 7pt }) * scale,
    text(size(looks.at(block.look), scale), fill: if quiet.contains(block.look) { ink2 } else { ink }, lead(block) + block.text),
  )
}

#let printed(block, scale) = {
  if block.kind == "title" {
    v(6mm)
    text(26pt, weight: 500, block.text)
    v(-4mm)
    text(13pt, fill: ink2, block.subtitle)
    v(4mm)
  } else if block.kind == "heading" {
    v((if block.level == 1 { 5pt } else { 2pt }) * scale)
    heading(level: block.level, text(size(if block.level == 1 { 14 } else { 10.5 }, scale), weight: 500, block.text))
  } else if block.kind == "paragraph" { paragraph(block, scale) }
  else if block.kind == "caution" { caution(block.grade, block.text, scale) }
  else if block.kind == "figure" { picture(block, scale) }
  else if block.kind == "pair" {
    grid(columns: (1fr, 1fr), column-gutter: 5mm, ..block.figures.map(each => picture(each, scale)))
  } else if block.kind == "panels" {
    grid(columns: (1fr, 1fr, 1fr), column-gutter: 4mm, row-gutter: 2.5mm, ..block.figures.map(each => panel(each, scale)))
  } else if block.kind == "table" { listing(block, scale) }
  else if block.kind == "references" { references(block.items, scale) }
}

#for (index, section) in data.sections.enumerate() {
  if index > 0 { pagebreak(weak: true) }
  for block in section.blocks { printed(block, section.scale) }
}
`;
