/** The look of the page on trust: the colors of the house, for a page that loads nothing of it. */
export const trustCss = `
:root { --paper: #f6f1e6; --sheet: #fdfaf3; --ink: #2a2520; --soft: #5c5248; --line: #8a7f73; --hair: #d9cfbf; --hand: #1d5a6f; --on: #ffffff; color-scheme: light; }
@media (prefers-color-scheme: dark) {
  :root { --paper: #1b1815; --sheet: #25211d; --ink: #eee6d8; --soft: #bdb1a1; --line: #93877a; --hair: #443c34; --hand: #86c5d6; --on: #0d2228; color-scheme: dark; }
}
* { box-sizing: border-box; }
body { margin: 0; background: var(--paper); color: var(--ink); font: 1.05rem/1.5 system-ui, sans-serif; }
main { max-width: 48rem; margin-inline: auto; padding: 1rem clamp(0.75rem, 3vw, 2rem) 4rem; }
h1, h2, h3, .house { font-family: Georgia, serif; line-height: 1.25; }
h1 { font-size: 1.7rem; margin: 0 0 0.75rem; }
h2 { font-size: 1.3rem; margin: 2rem 0 0.5rem; }
h3 { font-size: 1.1rem; margin: 0 0 0.5rem; }
.house { font-weight: 600; margin: 0 0 1.5rem; }
a { color: var(--hand); }
a:focus-visible { outline: 3px solid var(--hand); outline-offset: 2px; }
nav { display: flex; flex-wrap: wrap; gap: 0.25rem 1.25rem; }
nav a, ul a { display: inline-flex; align-items: center; min-height: 2.75rem; overflow-wrap: anywhere; }
.button { display: inline-flex; align-items: center; min-height: 2.75rem; padding: 0.4rem 1rem; border-radius: 0.2rem; background: var(--hand); color: var(--on); font-weight: 600; text-decoration: none; }
.soft { color: var(--soft); font-size: 0.95rem; }
.pairs { font: 1.05rem/1.6 ui-monospace, monospace; background: var(--sheet); border: 1px solid var(--hair); padding: 0.6rem 0.8rem; display: flex; flex-wrap: wrap; gap: 0 1.5rem; }
section { background: var(--sheet); border: 1px solid var(--hair); padding: 1rem; margin-top: 1rem; }
ol { margin: 0; padding: 0; list-style: none; counter-reset: step; display: grid; gap: 1rem; }
ol li { display: grid; grid-template-columns: 7.5rem minmax(0, 1fr); gap: 0 1rem; align-items: center; counter-increment: step; }
ol p { margin: 0; }
ol p::before { content: counter(step) ". "; font-weight: 600; }
ul { padding-left: 1.2rem; }
svg { width: 100%; }
.case { fill: none; stroke: var(--line); stroke-width: 2; }
.glass { fill: var(--paper); stroke: var(--hair); }
.row { fill: var(--hair); }
.touch { fill: var(--hand); }
.sheet { fill: var(--sheet); stroke: var(--line); }
.line { fill: none; stroke: var(--line); stroke-width: 2.5; }
.seal, .knob { fill: var(--on); stroke: var(--hand); stroke-width: 2; }
@media (max-width: 30rem) { ol li { grid-template-columns: 5rem minmax(0, 1fr); } }
`;
