import { useId } from 'react';
import { drawForm } from '../../../drawing/drawForm.ts';
import { capital } from '../../../ground/words.ts';
import type { Form } from '../../../knowledge/schema.ts';
import type { ExaminationContext } from '../examinationContext.ts';
import type { FormMeasure } from './readMeasure.ts';
import { measuresMm, viewMovedMost } from './viewMovedMost.ts';

/** Where a measure is taken: the piece in lines, and in dashes what moves when this measure is an eighth larger. */
export function MeasureSketch({
  form,
  context,
  measure,
}: {
  form: Form;
  context: ExaminationContext;
  measure: FormMeasure;
}) {
  const id = useId();
  const sizes = measuresMm(form, context.piece);
  const now = drawForm(form, context.piece.features, sizes);
  const larger = drawForm(form, context.piece.features, {
    ...sizes,
    [measure.id]: (sizes[measure.id] ?? measure.typicalMm) * 1.125,
  });
  const at = viewMovedMost(now, larger);
  const view = now.views[at?.view ?? 0];
  if (view === undefined) return null;
  const box = around(view.box, larger.views[at?.view ?? 0]?.box ?? view.box);
  return (
    <figure className="exam-sketch-figure">
      <svg className="exam-drawing" viewBox={box.join(' ')} role="img" aria-labelledby={`${id}-title`}>
        <title id={`${id}-title`}>{`${view.name}: where the ${measure.name} is taken`}</title>
        {view.shapes.map((shape, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: shapes have a fixed order
          <path key={index} className="exam-shape-line" d={shape.d} />
        ))}
        {at?.shapes.map((d, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: shapes have a fixed order
          <path key={index} className="exam-moved-line" d={d} />
        ))}
      </svg>
      <figcaption className="small">
        <strong>{capital(measure.name)}.</strong> {measure.how}{' '}
        {at === undefined
          ? 'It does not enter the drawing.'
          : 'Dashed: how the drawing moves if it were an eighth larger.'}
      </figcaption>
    </figure>
  );
}

type Box = readonly [number, number, number, number];

/** The box that holds both. */
function around([ax, ay, aw, ah]: Box, [bx, by, bw, bh]: Box): Box {
  const [x, y] = [Math.min(ax, bx), Math.min(ay, by)];
  return [x, y, Math.max(ax + aw, bx + bw) - x, Math.max(ay + ah, by + bh) - y];
}
