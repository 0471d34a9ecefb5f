import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { drawForm } from '../../drawing/drawForm.ts';
import { isMet, partsOf } from '../../drawing/partsOf.ts';
import { sidesUnderAll } from '../../drawing/sides.ts';
import { usualSizes } from '../../drawing/usualSizes.ts';
import type { Form } from '../../knowledge/schema.ts';
import { formatBoth } from '../../units/length.ts';
import { PieceDrawing } from '../examination/PieceDrawing.tsx';
import { PickField } from '../fields/PickField.tsx';
import { useKnowledge } from '../knowledge/useKnowledge.ts';
import { featuresToAsk } from '../pieces/featuresToAsk.ts';
import { chosenFeatures } from '../pieces/freshPiece.ts';
import { Basis, Cited } from './Cited.tsx';
import { evenViews } from './evenViews.ts';
import { FigureTable, figureLine } from './FigureTable.tsx';
import { StandardTerms } from './StandardTerms.tsx';
import '../examination/drawing.css';

/** A form: its drawing with the features chosen, its parts, usual sizes, cautions, and what it is prone to. */
export function FormEntry({ form }: { form: Form }) {
  const { alterations, sources } = useKnowledge();
  const [picked, setPicked] = useState<Record<string, string>>({});
  const features = chosenFeatures(form, picked);
  const parts = partsOf(form, features);
  const names = Object.fromEntries(parts.map((part) => [part.id, part.name]));
  const sizes = usualSizes(form, features);
  const { views } = drawForm(form, features, {});
  return (
    <div className="stack">
      <h2>{form.name}</h2>
      <p className="said entry-lead">{form.what}</p>
      {form.cautions.map((caution) => (
        <p key={caution} className="caution">
          {caution}
        </p>
      ))}
      <p className="row no-print">
        <Link className="button quiet" to="/reference" search={{ shelf: 'signs', of: form.id }}>
          Signs to look for
        </Link>
        <a
          className="button quiet"
          href={`/api/field-guide.pdf?form=${form.id}`}
          target="_blank"
          rel="noreferrer"
        >
          Field guide to print (PDF)
        </a>
      </p>
      <div className="form-features no-print">
        {featuresToAsk(form, features).map((feature) => (
          <PickField
            key={feature.id}
            label={feature.name}
            value={features[feature.id] ?? ''}
            options={feature.options}
            onPick={(option) => setPicked({ ...picked, [feature.id]: option })}
          />
        ))}
      </div>
      <div className="form-views">
        {evenViews(views).map((view) => (
          <figure key={view.view} className="form-view">
            <PieceDrawing view={view} names={names} />
            <figcaption className="small soft">{view.name}</figcaption>
          </figure>
        ))}
      </div>
      <p className="small soft">
        {sidesUnderAll(
          views.map(({ view }) => view),
          form.sides,
        )}{' '}
        Drawn at its usual sizes. Style: pieces of the period were made from {form.styleSpan[0]} to{' '}
        {form.styleSpan[1]}, where a claim gives no years.
      </p>
      <Measures form={form} features={features} sizes={sizes} />
      <FigureTable
        caption="Parts: of 100 pieces of the period, in how many it was renewed in ordinary use"
        head="Part"
        lines={parts.map((part) => ({
          ...figureLine(part.name, part.renewed, form.basis, sources),
          link: part.kind,
        }))}
        nameOf={(line) => (
          <Link to="/reference" search={{ shelf: 'signs', of: form.id, on: line.link ?? '' }}>
            {line.name}
          </Link>
        )}
      />
      <section className="stack-tight">
        <h3>Prone to</h3>
        <ul>
          {form.alterations.map((id) => (
            <li key={id}>
              <Link to="/reference" search={{ alteration: id }}>
                {alterations[id]?.name ?? id}
              </Link>
            </li>
          ))}
        </ul>
      </section>
      <StandardTerms aat={form.aat} />
      <Basis basis={form.basis} />
      <Cited ids={[...form.sources, ...(form.basis?.source === undefined ? [] : [form.basis.source])]} />
    </div>
  );
}

type MeasuresProps = { form: Form; features: Record<string, string>; sizes: Record<string, number> };

function Measures({ form, features, sizes }: MeasuresProps) {
  return (
    <table className="figures wordy">
      <caption>Measures</caption>
      <thead>
        <tr>
          <th scope="col">Measure</th>
          <th scope="col">Usual</th>
          <th scope="col">Believable</th>
          <th scope="col">How</th>
        </tr>
      </thead>
      <tbody>
        {form.measures
          .filter((measure) => isMet(measure.when, features))
          .map((measure) => (
            <tr key={measure.id}>
              <th scope="row">{measure.name}</th>
              <td data-head="Usual">{formatBoth(sizes[measure.id] ?? measure.typicalMm)}</td>
              <td data-head="Believable">
                {formatBoth(measure.lowMm)} to {formatBoth(measure.highMm)}
              </td>
              <td data-head="How">{measure.how}</td>
            </tr>
          ))}
      </tbody>
    </table>
  );
}
