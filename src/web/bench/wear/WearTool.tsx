import { useState } from 'react';
import { z } from 'zod';
import { wearContact } from '../../../calculations/wearContact.ts';
import { drawForm } from '../../../drawing/drawForm.ts';
import { sidesUnder } from '../../../drawing/sides.ts';
import { usualSizes } from '../../../drawing/usualSizes.ts';
import { capital } from '../../../ground/words.ts';
import { partName } from '../../drawer/partName.ts';
import { useDraft } from '../../drawer/useDraft.ts';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { PickField } from '../../fields/PickField.tsx';
import { type BenchContext, type Found, faultWords, findingsOf } from '../benchContext.ts';
import { ResultSheet } from '../ResultSheet.tsx';
import { runHere } from '../runHere.ts';
import { HeatDrawing } from './HeatDrawing.tsx';
import { MissingSizes } from './MissingSizes.tsx';
import { PaintGrid } from './PaintGrid.tsx';
import { type Stroke, strokes, surfaceKey, unpainted, wornOf } from './painting.ts';
import { contraryPainted, oftenLevel, oftenWords, type WearContact, wearWords } from './wearWords.ts';
import './wear.css';

const draftShape = z.object({
  painting: z.record(z.string(), z.array(z.array(z.enum(['sharp', 'none', 'light', 'heavy']).nullable()))),
  sizes: z.record(z.string(), z.object({ text: z.string(), mm: z.number().positive() })),
});

type Draft = z.infer<typeof draftShape>;

/** Where use would have worn the piece, drawn over it; the wear that is there, painted; and how far they agree. */
export function WearTool({ context }: { context: BenchContext }) {
  const { piece, form, knowledge } = context;
  const [draft, type] = useDraft<Draft>(`${piece.id}.wear`, draftShape, () => ({ painting: {}, sizes: {} }));
  const [chosen, setChosen] = useState<string>();
  const [brush, setBrush] = useState<Stroke>('heavy');
  const taken = Object.fromEntries(
    form.measures.flatMap(({ id }) => {
      const mm = piece.measures[id]?.mm ?? draft.sizes[id]?.mm;
      return mm === undefined ? [] : [[id, mm] as const];
    }),
  );
  const asked = { form: form.id, features: piece.features, measures: taken };
  const laid = runHere(wearContact, asked, knowledge);
  if (!laid.ok)
    return (
      <p className="caution" role="alert">
        {faultWords(laid.faults)}
      </p>
    );
  const { surfaces, unknown } = laid.output;
  const nameOf = (part: string) => capital(partName(context.parts, part));
  if (surfaces.length === 0)
    return (
      <p>Where use touches the parts of this form is not known yet: note its wear in the examination.</p>
    );
  const worn = wornOf(draft.painting, surfaces);
  const input = { ...asked, worn };
  const result = worn.length === 0 ? undefined : runHere(wearContact, input, knowledge);
  const score = result?.ok ? result.output.score : null;
  const contrary = score === null ? [] : contraryPainted(score.contrary, draft.painting, surfaces);
  const paintedParts = context.parts.filter(({ id }) => worn.some(({ part }) => part === id));
  const findings =
    score === null
      ? undefined
      : findingsOf(context, {
          from: 'wear.contact',
          worn: score.worn,
          auc: score.auc,
          aucSigma: score.aucSigma,
          isContrary: contrary.length > 0,
          kinds: paintedParts.map(({ kind }) => kind),
        });
  const found: Found | undefined =
    score === null || !result?.ok
      ? undefined
      : {
          calculation: wearContact,
          input,
          output: { score },
          says: wearWords(score, contrary, nameOf, findings),
          marks: draft,
          findings,
        };
  const open = surfaces.filter(({ part }) => part === chosen);
  return (
    <div className="stack">
      {Object.keys(draft.painting).length === 0 && <KeptPaintings context={context} onTake={type} />}
      <Drawings context={context} sizes={taken} contact={laid.output} chosen={chosen} onTouch={setChosen} />
      <PickField
        label="Part to paint the wear of"
        value={chosen ?? ''}
        options={[
          { id: '', name: 'Choose a part, or touch it in the drawing' },
          ...[...new Set(surfaces.map(({ part }) => part))].map((part) => ({
            id: part,
            name: `${nameOf(part)}${worn.some((each) => each.part === part) ? ' (painted)' : ''}`,
          })),
        ]}
        onPick={(part) => setChosen(part === '' ? undefined : part)}
      />
      {open.length > 0 && (
        <ChoiceField
          label="What you see"
          value={brush}
          save={setBrush}
          choices={strokes.map(({ id, name, sign, note }) => ({ id, name: `${name} ${sign}`, note }))}
        />
      )}
      {open.map((surface) => (
        <section key={surfaceKey(surface)} className="stack-tight" aria-label={nameOf(surface.part)}>
          <h3>
            {nameOf(surface.part)}: {surface.by}
          </h3>
          <p className="small">
            Use touches it {oftenWords[oftenLevel(surface.per100Uses)]} (about{' '}
            {Math.round(surface.per100Uses)} of 100 uses, by judgment).
          </p>
          <PaintGrid
            surface={surface}
            name={nameOf(surface.part)}
            rows={fitting(draft.painting[surfaceKey(surface)], surface.faces) ?? unpainted(surface)}
            brush={brush}
            onPaint={(rows) =>
              type({ ...draft, painting: { ...draft.painting, [surfaceKey(surface)]: rows } })
            }
          />
        </section>
      ))}
      {chosen === undefined && (
        <p className="said">
          Choose a part, look at its faces one by one, and paint the wear that is there. Painted wear is held
          against where feet, hands, backs and drawers would have touched.
        </p>
      )}
      {result?.ok === false && (
        <p className="caution" role="alert">
          {faultWords(result.faults)}
        </p>
      )}
      {found !== undefined && (
        <>
          <ResultSheet
            context={{ ...context, parts: paintedParts }}
            found={found}
            title={`Wear of ${paintedParts.map(({ name }) => name).join(', ')}`}
          />
          <p className="small soft">
            It weighs all painted surfaces together: enter it once, on the part it tells most of.
          </p>
        </>
      )}
      <MissingSizes
        context={context}
        typed={draft.sizes}
        onType={(id, size) => {
          const { [id]: _, ...others } = draft.sizes;
          type({ ...draft, sizes: size === undefined ? others : { ...others, [id]: size } });
        }}
      />
      {unknown.length > 0 && (
        <p className="small soft">
          Not known how use touches: {unknown.map((part) => partName(context.parts, part)).join(', ')}.
        </p>
      )}
      <p className="small soft">
        Polishing, house moves, children and a refinishing are not in it; a renewed part is worn as long as it
        has been there.
      </p>
    </div>
  );
}

/** Kept rows, where they still have the surface's faces. */
function fitting<Rows extends readonly unknown[]>(rows: Rows | undefined, faces: readonly string[]) {
  return rows?.length === faces.length ? rows : undefined;
}

/** Paintings kept at the bench before, to be taken up again on any device. */
function KeptPaintings({ context, onTake }: { context: BenchContext; onTake: (draft: Draft) => void }) {
  const kept = Object.values(context.piece.bench).flatMap(({ id, title, calculation, marks }) => {
    const read = calculation === wearContact.id ? draftShape.safeParse(marks) : undefined;
    return read?.success ? [{ id, title, draft: read.data }] : [];
  });
  if (kept.length === 0) return null;
  return (
    <div className="row">
      {kept.map(({ id, title, draft }) => (
        <button key={id} type="button" className="button quiet" onClick={() => onTake(draft)}>
          Take up again: {title}
        </button>
      ))}
    </div>
  );
}

type DrawingsProps = {
  context: BenchContext;
  sizes: Record<string, number>;
  contact: WearContact;
  chosen: string | undefined;
  onTouch: (part: string) => void;
};

/** The piece with where use touches it, one view at a time. */
function Drawings({ context, sizes, contact, chosen, onTouch }: DrawingsProps) {
  const { form, piece } = context;
  const drawing = drawForm(form, piece.features, { ...usualSizes(form, piece.features), ...sizes });
  const touched = new Set(contact.surfaces.map(({ part }) => part));
  const views = drawing.views.filter(({ shapes }) => shapes.some(({ part }) => touched.has(part)));
  const [viewId, setView] = useState(views[0]?.view);
  const view = views.find((each) => each.view === viewId) ?? views[0];
  if (view === undefined) return null;
  return (
    <figure className="wear-figure">
      <fieldset className="wear-views row">
        <legend className="unseen">View</legend>
        {views.map((each) => (
          <button
            key={each.view}
            type="button"
            className="button quiet small"
            aria-pressed={each === view}
            onClick={() => setView(each.view)}
          >
            {each.name}
          </button>
        ))}
      </fieldset>
      <HeatDrawing
        view={view}
        surfaces={contact.surfaces}
        isSeating={form.family === 'seating'}
        nameOf={(part) => capital(partName(context.parts, part))}
        chosen={chosen}
        onTouch={onTouch}
      />
      <figcaption className="small">
        {sidesUnder(view.view, form.sides)} The stronger the tone, the more use touches. Figures:{' '}
        {([1, 2, 3, 4] as const).map((level) => `${level} ${oftenWords[level]}`).join(' · ')}.
      </figcaption>
    </figure>
  );
}
