/** What the terminal program can do. */
export const helpText = `Underside from the terminal

  npx underside calc                    lists the calculations
  npx underside calc ID FILE            runs one on a JSON file (- for standard input), prints JSON
  npx underside calc ID --schema        prints the JSON Schemas of its input and output
  npx underside calc ID --example       prints an input that works
  npx underside verify [--data DIR]     checks that the record is as it was written, photos and signed
                                        revisions too (--head HASH --count N: and had this head, noted before)
  npx underside verify FILE.pdf         tells whether a file is the opinion that was issued, by its own
                                        check line and the record [--record DIR]
  npx underside backup DIR [--data DIR] copies the record into DIR, dated, and reads the copy back
  npx underside restore BACKUP DIR      brings a record back into an empty folder (--what-is-whole: also a damaged one)
  npx underside piece out ID FILE       takes one piece out as one file (a zip that any browser reads)
  npx underside piece in FILE           brings it into a record (--beside: as a piece of its own)
  npx underside help                    prints this

Ends with 0 when done, 1 when a check did not hold, 2 when the input can’t be used: each fault is one sentence
on standard error, with the path of the field. docs/calculations.md describes every calculation.
npm start opens the screens.`;
