import type { TrustPicture } from './trustSteps.ts';

/** A small drawing of a step, in lines: what is to be touched is filled. Drawn by us; no system looks quite like it. */
export function trustPicture(kind: TrustPicture): string {
  return `<svg viewBox="0 0 120 90" role="img" aria-label="${labels[kind]}">${tablet}${drawings[kind]}</svg>`;
}

const tablet =
  '<rect class="case" x="14" y="5" width="92" height="80" rx="7"/><rect class="glass" x="21" y="12" width="78" height="66" rx="2"/>';

const rows = (at: number) =>
  [0, 1, 2, 3]
    .map(
      (row) =>
        `<rect class="${row === at ? 'touch' : 'row'}" x="27" y="${18 + 14 * row}" width="66" height="10" rx="2"/>`,
    )
    .join('');

const labels: Record<TrustPicture, string> = {
  fetch: 'A tablet with an arrow that points down onto a tray: fetch the certificate',
  list: 'A tablet with a list of settings, one line of it touched',
  install: 'A tablet with a certificate and a button beneath it, touched: install',
  switch: 'A tablet with a list and a switch that is turned on',
  file: 'A screen with the file of a certificate, touched',
};

const seal = (x: number, y: number) =>
  `<rect class="sheet" x="${x}" y="${y}" width="36" height="26" rx="2"/><path class="line" d="M${x + 6} ${y + 7}h20M${x + 6} ${y + 12}h16"/><circle class="seal" cx="${x + 27}" cy="${y + 18}" r="4.5"/>`;

const drawings: Record<TrustPicture, string> = {
  fetch: '<path class="touch" d="M56 20h8v20h9L60 55 47 40h9z"/><path class="line" d="M38 56v10h44V56"/>',
  list: rows(2),
  install: `${seal(42, 18)}<rect class="touch" x="40" y="56" width="40" height="13" rx="3"/>`,
  switch:
    '<rect class="row" x="27" y="18" width="66" height="10" rx="2"/><path class="line" d="M27 50h34"/><rect class="touch" x="68" y="42" width="25" height="15" rx="7.5"/><circle class="knob" cx="85" cy="49.5" r="5.5"/>',
  file: `<rect class="touch" x="36" y="24" width="48" height="40" rx="4"/>${seal(42, 31)}`,
};
