/** How a page looks that any browser shows without this program. */
export const pageStyle = `
:root { color-scheme: light; }
body { font: 1rem/1.5 Georgia, "Times New Roman", serif; color: #2b2620; background: #fdfbf7; max-width: 60rem; margin: 0 auto; padding: 1.25rem clamp(0.9rem, 4vw, 2.5rem) 4rem; overflow-wrap: anywhere; }
h1 { font-size: 1.9rem; line-height: 1.2; margin: 0.5rem 0 0.25rem; }
h2 { font-size: 1.35rem; margin: 2.25rem 0 0.5rem; border-bottom: 1px solid #cdbfa9; padding-bottom: 0.2rem; }
h3 { font-size: 1.08rem; margin: 1.25rem 0 0.25rem; }
p, li, dd { max-width: 44rem; }
.lead { font-size: 1.12rem; }
.note, small { color: #5f564a; font-size: 0.9rem; }
.own { border-left: 3px solid #cdbfa9; padding-left: 0.8rem; white-space: pre-wrap; }
.notice { border-left: 4px solid #a2562a; background: #f8ece1; padding: 0.5rem 0.8rem; max-width: 44rem; }
dl { display: grid; grid-template-columns: minmax(7rem, 13rem) 1fr; gap: 0.25rem 1rem; }
dt { color: #5f564a; grid-column: 1; }
dd { margin: 0; grid-column: 2; }
.wide { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; font-size: 0.92rem; }
caption { text-align: left; color: #5f564a; padding: 0.3rem 0; }
th, td { text-align: left; vertical-align: top; padding: 0.3rem 0.6rem 0.3rem 0; border-bottom: 1px solid #e5dccd; min-width: 4.5rem; }
figure { margin: 1rem 0; }
figure img { max-width: 100%; height: auto; display: block; background: #fff; }
.swatch { height: 1em; }
code { font-size: 0.85em; }
@media (max-width: 36rem) { dl { grid-template-columns: 1fr; } dd { grid-column: 1; margin-bottom: 0.5rem; } }
summary { cursor: pointer; color: #7a4a2b; padding: 0.6rem 0; }
@media print { body { max-width: none; } details:not([open]) > *:not(summary) { display: none; } figure { break-inside: avoid; } }
`;
