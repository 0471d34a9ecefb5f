/**
 * How the pages are set: everything that does not hang on the piece. Written in Typst, without any text of the piece
 * in it.
 *
 * The text width is the same on both papers, so that line ends and plates do not move between them.
 */
export const template = `
#let ink = rgb("#2b2622")
#let soft = rgb("#655b51")
#let walnut = rgb("#7a4a2b")
#let line = rgb("#cdc2b3")
#let paper-tone = rgb("#f6f1e9")
#let serif = ("Source Serif 4",)
#let sans = ("Source Sans 3",)
#let small(body) = text(font: sans, size: 8.6pt, body)
#let label(body) = text(font: sans, size: 8.6pt, weight: 600, fill: soft, body)

#let weblink(address, words) = {
  show link: set text(fill: soft)
  if address.starts-with("https://") or address.starts-with("http://") { link(address, text(words)) } else { text(words) }
}

#let set-pages(body, paper: "a4", head: "", foot: "", draft: false, tight: false) = {
  let (width, height) = if paper == "us-letter" { (215.9mm, 279.4mm) } else { (210mm, 297mm) }
  let side = (width - 162mm) / 2
  set page(
    width: width,
    height: height,
    margin: (left: side, right: side, top: if tight { 20mm } else { 27mm }, bottom: if tight { 17mm } else { 24mm }),
    header-ascent: 9mm,
    footer-descent: 8mm,
    header: context {
      set text(font: sans, size: 8pt, fill: soft)
      let first = counter(page).get().first() == 1
      grid(
        columns: (1fr, auto),
        if first { [] } else { text(head) },
        if draft { text(weight: 700, fill: walnut, tracking: 1.2pt, "DRAFT") } else { [] },
      )
      if not first { v(-6pt); std.line(length: 100%, stroke: 0.4pt + line) }
    },
    footer: context {
      set text(font: sans, size: 8pt, fill: soft)
      grid(
        columns: (1fr, auto),
        text(foot),
        [page #counter(page).display() of #counter(page).final().first()],
      )
    },
    background: if draft {
      rotate(-52deg, text(font: sans, size: 118pt, weight: 700, fill: rgb("#f1ece4"), tracking: 8pt, "DRAFT"))
    },
  )
  set text(font: serif, size: if tight { 9.3pt } else { 10.4pt }, fill: ink, lang: "en", region: "US", hyphenate: false, number-type: "lining")
  set par(leading: if tight { 0.58em } else { 0.66em }, spacing: if tight { 0.75em } else { 0.95em }, justify: false)
  set list(marker: text(fill: walnut, "–"), indent: 0pt, body-indent: 0.7em, spacing: 0.75em)
  show strong: set text(weight: 600)
  show heading: set block(sticky: true)
  show heading: set text(hyphenate: false)
  show heading.where(level: 1): it => block(above: if tight { 1em } else { 2.1em }, below: if tight { 0.7em } else { 0.95em }, sticky: true, {
    text(font: serif, size: if tight { 12pt } else { 15pt }, weight: 600, it.body)
    v(-0.55em)
    std.line(length: 100%, stroke: 0.7pt + walnut)
  })
  show heading.where(level: 2): it => block(above: 1.5em, below: 0.8em, sticky: true, text(font: sans, size: 10pt, weight: 600, fill: walnut, it.body))
  show figure: set block(breakable: true)
  show figure: set align(left)
  show figure.caption: it => block(sticky: true, width: 100%, text(font: sans, size: 8.6pt, fill: soft, it.body))
  set table.cell(breakable: false)
  body
}

#let title-block(kicker, name, under) = {
  text(font: sans, size: 9pt, weight: 600, fill: walnut, tracking: 0.6pt, kicker)
  v(-0.2em)
  show title: set text(font: serif, size: 23pt, weight: 600)
  show title: set par(leading: 0.4em)
  show title: set block(above: 0.5em, below: 0.7em)
  title(text(name))
  if under != "" { text(font: serif, size: 12.5pt, style: "italic", fill: soft, under) }
  v(0.6em)
}

#let section(words) = heading(level: 1, text(words))
#let subsection(words) = heading(level: 2, text(words))

#let said(tone, body) = {
  if tone == "lead" { block(below: 1em, text(size: 12.4pt, body)) }
  else if tone == "note" { block(above: 0.9em, below: 0.9em, width: 88%, text(font: sans, size: 9pt, fill: soft, body)) }
  else if tone == "own" { block(inset: (left: 9pt), stroke: (left: 1.6pt + walnut), above: 0.9em, below: 1.2em, body) }
  else { par(body) }
}

#let points(tone, items) = if tone == "works" {
  set text(font: sans, size: 8.8pt)
  set par(leading: 0.5em)
  block(above: 1em, below: 1.1em, list(spacing: 0.8em, ..items))
} else {
  block(above: 1em, below: 1.1em, list(..items))
}

#let facts(rows, name-width: 34mm) = block(breakable: rows.len() > 7, sticky: rows.len() < 4, grid(
  columns: (name-width, 1fr),
  row-gutter: 0.72em,
  column-gutter: 5mm,
  ..rows.map(((name, words)) => (pad(top: 1.4pt, label(name)), words.map(each => block(above: 0.55em, below: 0.55em, each)).join())).flatten(),
))

#let small-plate(picture) = {
  image(picture.path, alt: picture.alt, width: picture.width, height: picture.height)
  v(-0.5em)
  text(font: sans, size: 8pt, weight: 600, fill: walnut, "Plate " + str(picture.number))
}

#let front(rows, picture) = if picture == none { facts(rows) } else {
  grid(columns: (1fr, picture.width), column-gutter: 7mm, align: top + left, facts(rows, name-width: 24mm), pad(top: 2mm, small-plate(picture)))
}

#let strip(all) = {
  let shown = all.filter(each => each != none)
  if shown.len() > 0 { block(above: 1.2em, below: 1.2em, breakable: false, grid(
    columns: shown.map(each => each.width),
    column-gutter: 3mm,
    align: bottom + left,
    ..shown.map(small-plate),
  )) }
}

#let notice(tone, name, words) = block(
  width: 100%,
  fill: paper-tone,
  stroke: (left: 2.2pt + walnut),
  inset: (left: 11pt, right: 11pt, y: 9pt),
  above: 1.1em,
  below: 1.1em,
  breakable: false,
  {
    set text(size: 9.6pt)
    set par(spacing: 0.7em)
    par(text(font: sans, weight: 600, fill: walnut, name))
    for each in words { par(each) }
  },
)

#let ledger(caption, columns, groups, whole: false) = {
  let count = columns.len()
  let heads = columns.map(((name, share, side)) => text(font: sans, size: 8.2pt, weight: 600, fill: soft, name))
  let body = ()
  for (name, note, rows) in groups {
    if name != none {
      body.push(table.header(level: 2, repeat: false, table.cell(colspan: count, inset: (left: 0pt, right: 0pt, top: 11pt, bottom: 4pt), {
        text(font: sans, size: 9.2pt, weight: 600, fill: walnut, name)
        if note != none { v(-2.5pt); text(size: 8.4pt, fill: soft, note) }
      })))
    }
    for row in rows { body += row }
  }
  block(above: 1.4em, below: 1.5em, breakable: not whole, figure(
    kind: "ledger",
    supplement: none,
    numbering: none,
    gap: 0.7em,
    caption: figure.caption(position: top, text(font: sans, size: 9.2pt, weight: 600, fill: ink, caption)),
    {
      set text(font: sans, size: 8.9pt)
      set par(leading: 0.52em)
      table(
        columns: columns.map(((name, share, side)) => share),
        align: (x, y) => columns.at(x, default: ("", 1fr, left)).at(2) + top,
        inset: (x, y) => (left: if x == 0 { 0pt } else { 5pt }, right: if x == count - 1 { 0pt } else { 5pt }, y: 4.2pt),
        stroke: (x, y) => (bottom: if y == 0 { 0.8pt + soft } else { 0.35pt + line }),
        table.header(..heads),
        ..body,
      )
    },
  ))
}

#let drawn(picture) = figure(
  kind: "drawing",
  supplement: none,
  numbering: none,
  gap: 0.6em,
  caption: text(picture.caption),
  image(picture.path, alt: picture.alt, width: picture.width, height: picture.height),
)

#let pictures(all) = {
  if all.len() == 1 { block(above: 1.2em, below: 1.2em, breakable: false, align(left, drawn(all.first()))) }
  else { block(above: 1.2em, below: 1em, breakable: false, sticky: true, grid(
    columns: all.map(each => each.width),
    column-gutter: 1fr,
    align: bottom + left,
    ..all.map(drawn),
  )) }
}

#let key(name, entries) = block(above: 0.9em, below: 1em, breakable: false, {
  set text(font: sans, size: 8.9pt)
  par(label(name))
  grid(
    columns: (9mm, 1fr),
    column-gutter: 2.5mm,
    row-gutter: 2mm,
    align: top + left,
    ..entries.map(((path, words)) => (pdf.artifact(image(path, width: 9mm)), pad(top: 1pt, text(words)))).flatten(),
  )
})

#let disc(number) = box(circle(radius: 2.15mm, fill: white, stroke: 0.8pt + ink, inset: 0pt, align(center + horizon, text(font: sans, size: 7.4pt, weight: 700, fill: ink, str(number)))))

#let mark-on(mark, width, height) = {
  let at(point, body) = place(top + left, dx: point.at(0), dy: point.at(1), body)
  let haloed(draw) = { draw(2.6pt + white); draw(1.1pt + rgb("#a8321c")) }
  let first = mark.points.first()
  if mark.kind == "point" {
    haloed(pen => at((first.at(0) - 2.6mm, first.at(1) - 2.6mm), circle(radius: 2.6mm, stroke: pen)))
  } else if mark.kind == "line" and mark.points.len() > 1 {
    haloed(pen => for (a, b) in mark.points.windows(2) { place(top + left, std.line(start: a, end: b, stroke: pen)) })
  } else {
    haloed(pen => place(top + left, polygon(stroke: pen, ..mark.points)))
  }
  let clamp(value, most) = calc.max(0mm, calc.min(value, most))
  at((clamp(first.at(0) + 2.2mm, width - 4.6mm), clamp(first.at(1) - 6mm, height - 4.6mm)), disc(mark.number))
}

#let plate(number: 0, path: none, alt: "", caption: "", origin: "", width: 0mm, height: 0mm, beside: false, marks: ()) = {
  let picture = if path == none {
    block(width: width, height: calc.min(height, 30mm), fill: paper-tone, stroke: 0.5pt + line, inset: 8pt, align(horizon + left, small(text(fill: soft, "The picture of this plate is not at hand: its file could not be read. What the record says of it stands with it."))))
  } else {
    block(width: width, height: height, {
      image(path, alt: alt, width: width, height: height)
      pdf.artifact(for mark in marks { mark-on(mark, width, height) })
    })
  }
  let words = {
    set text(font: sans, size: 8.9pt)
    set par(leading: 0.55em, spacing: 0.75em)
    par({ text(weight: 600, fill: walnut, "Plate " + str(number) + ". "); text(caption) })
    if path == none { par(text(fill: soft, alt)) }
    if marks.len() > 0 {
      set enum(numbering: n => text(weight: 600, str(n)), spacing: 0.6em)
      enum(..marks.map(mark => enum.item(mark.number, text(mark.says))))
    }
    if origin != "" { par(text(size: 8pt, fill: soft, origin)) }
  }
  block(above: 1.3em, below: 1.7em, breakable: false, if beside {
    grid(columns: (width, 1fr), column-gutter: 6mm, align: top + left, picture, words)
  } else {
    picture
    v(-0.2em)
    words
  })
}

#let signature(statements, name, day, draft: false) = block(below: 1em, breakable: false, width: 100%, {
  for each in statements { par(each) }
  v(1.2em)
  set text(font: sans, size: 9.2pt)
  if draft {
    par(text(fill: walnut, weight: 600, "Not signed: a draft."))
    v(13mm)
  } else {
    text(font: serif, size: 14pt, style: "italic", name)
    v(-0.4em)
  }
  grid(
    columns: (1fr, 48mm),
    column-gutter: 8mm,
    row-gutter: 2mm,
    std.line(length: 100%, stroke: 0.6pt + ink),
    std.line(length: 100%, stroke: 0.6pt + ink),
    { label("Signature"); if name != "" { text(fill: soft, " – " + name) } },
    { label("Date"); if day != "" { text(" " + day) } },
  )
})
`;
