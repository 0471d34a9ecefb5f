/**
 * How a field guide is set: A5, one column, for the pocket and for a screen held in the hand. It stands after the
 * template of the opinion and takes its inks and faces from there.
 */
export const guideTemplate = `
#let guide-pages(body, head: "", foot: "") = {
  set page(
    width: 148mm,
    height: 210mm,
    margin: (left: 13mm, right: 13mm, top: 17mm, bottom: 16mm),
    header-ascent: 6mm,
    footer-descent: 5mm,
    header: context {
      set text(font: sans, size: 7.5pt, fill: soft)
      if counter(page).get().first() > 1 { text(head); v(-6pt); std.line(length: 100%, stroke: 0.4pt + line) }
    },
    footer: context {
      set text(font: sans, size: 7.5pt, fill: soft)
      grid(columns: (1fr, auto), text(foot), [page #counter(page).display() of #counter(page).final().first()])
    },
  )
  set text(font: serif, size: 9.4pt, fill: ink, lang: "en", region: "GB", hyphenate: false, number-type: "lining")
  set par(leading: 0.58em, spacing: 0.75em, justify: false)
  show heading: set block(sticky: true)
  show heading.where(level: 1): it => block(above: 1.8em, below: 0.8em, sticky: true, {
    text(font: serif, size: 13pt, weight: 600, it.body)
    v(-0.55em)
    std.line(length: 100%, stroke: 0.7pt + walnut)
  })
  show heading.where(level: 2): it => block(above: 1.3em, below: 0.7em, sticky: true, text(font: sans, size: 9.4pt, weight: 600, fill: walnut, it.body))
  show heading.where(level: 3): it => block(above: 0pt, below: 0.5em, sticky: true, text(font: serif, size: 10pt, weight: 600, it.body))
  show figure: set align(left)
  show figure.caption: it => block(width: 100%, text(font: sans, size: 7.8pt, fill: soft, it.body))
  body
}

#let views(all) = block(above: 1.2em, below: 1em, breakable: false, grid(
  columns: all.map(each => calc.max(each.width, 18mm)),
  column-gutter: 5mm,
  align: bottom + left,
  ..all.map(each => figure(kind: "drawing", supplement: none, numbering: none, gap: 0.5em, caption: text(each.caption), image(each.path, alt: each.alt, width: each.width, height: each.height))),
))

#let parts(rows) = {
  set text(font: sans, size: 8.2pt)
  set par(leading: 0.5em)
  table(
    columns: (38mm, 1fr),
    inset: (x, y) => (left: if x == 0 { 0pt } else { 4pt }, right: 0pt, y: 3pt),
    stroke: (x, y) => (bottom: if y == 0 { 0.8pt + soft } else { 0.35pt + line }),
    table.header(label("Part"), label("Signs, by their numbers")),
    ..rows.map(((part, numbers)) => (text(part), text(numbers))).flatten(),
  )
}

#let entry(number: 0, name: "", mine: false, look: "", caution: "", facts: "", mistaken: "", figures: "", works: "", again: false, drawings: ()) = block(above: 1.15em, below: 1.15em, breakable: drawings.len() > 1, {
  heading(level: 3, { text(fill: walnut, str(number)); h(0.5em); text(name); if mine { h(0.6em); box(stroke: 0.5pt + walnut, inset: (x: 3pt, y: 1.5pt), baseline: 1.5pt, text(font: sans, size: 7.4pt, weight: 600, fill: walnut, "your own addition")) } })
  if caution != "" { block(above: 0.5em, below: 0.6em, inset: (left: 6pt), stroke: (left: 1.6pt + walnut), text(font: sans, size: 8.4pt, caution)) }
  par(text(look))
  for each in drawings {
    block(above: 0.7em, below: 0.7em, breakable: false, grid(
      columns: (58mm, 1fr),
      column-gutter: 4mm,
      align: top + left,
      image(each.path, alt: each.alt, width: 58mm),
      text(font: sans, size: 8pt, fill: soft, each.caption),
    ))
  }
  set text(font: sans, size: 8.1pt)
  set par(leading: 0.5em, spacing: 0.55em)
  if mistaken != "" { par({ text(weight: 600, "Mistaken for: "); text(mistaken) }) }
  par(text(facts))
  par(text(fill: soft, figures + if works != "" { " Works: " + works + "." } else { "" } + if again { " Drawn with an earlier sign." } else { "" }))
})

#let works(items) = {
  set text(font: sans, size: 7.9pt)
  set par(leading: 0.5em)
  enum(spacing: 0.7em, ..items)
}
`;
