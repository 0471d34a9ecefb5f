import { stateNames } from '../../../knowledge/stateNames.ts';
import type { OwnKind } from './fieldShapes.ts';
import type { OwnFault } from './ownServer.ts';
import { wordsOf } from './ownWords.ts';

/**
 * A fault in the words of the sheet. The program's own files are written by hand, and its faults speak of fields, rows and
 * brackets; here they speak of what stands on the screen.
 */
export function inSheetWords(fault: OwnFault, kind: OwnKind): OwnFault {
  const label = fault.path === '' ? '' : `“${labelOf(fault.path, kind)}”`;
  const plain = fault.message
    .replace(/ A right one: [\s\S]*$/, '')
    .replace(/ See docs\/knowledge\.md[^.]*\.?/, '');
  const noFigure = /has no figure for ([a-z-]+)\./.exec(plain)?.[1];
  if (noFigure !== undefined)
    return {
      ...fault,
      path: `shows/${noFigure}`,
      message: `The figures for “${stateNames[noFigure] ?? noFigure}” are still blank.`,
    };
  if (label !== '' && / is missing\./.test(plain)) return { ...fault, message: `${label} is still blank.` };
  const fieldName = fault.path.split('/').join(' → ');
  const message =
    label !== '' && plain.startsWith(`${fieldName} `) ? `${label}${plain.slice(fieldName.length)}` : plain;
  return { ...fault, message };
}

/** `habits/0/shows` is called as the sheet calls it: by its own label, or that of what it belongs to. */
function labelOf(path: string, kind: OwnKind): string {
  const steps = path.split('/').filter((step) => !/^\d+$/.test(step));
  const [first, second] = steps;
  if (first === 'shows' && second !== undefined) return stateNames[second] ?? second;
  return wordsOf(kind, steps.slice(0, 2).join('.')).label;
}
