import { useState } from 'react';
import { photoColourBalance } from '../../../calculations/photoColourBalance.ts';
import { regionOf } from '../../board/boardMark.ts';
import { PhotoBoard } from '../../board/PhotoBoard.tsx';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { PickField } from '../../fields/PickField.tsx';
import { type BenchContext, type Found, findingsOf } from '../benchContext.ts';
import { ResultSheet } from '../ResultSheet.tsx';
import { ColourList } from './ColourList.tsx';
import { cardRegions } from './cardRegions.ts';
import { colourWords } from './colourWords.ts';
import { FindCard } from './FindCard.tsx';
import { MarkButtons } from './MarkButtons.tsx';
import { OnPhoto } from './OnPhoto.tsx';
import { Under } from './Under.tsx';
import { useBenchMarks } from './useBenchMarks.ts';
import { useCard } from './useCard.ts';
import type { LaidPicture } from './useOpenPicture.ts';
import { usePictureCalculation } from './usePictureCalculation.ts';

/** The colour of a grey card of 18 in 100, as a screen has it: L* = 49.5 by IEC 61966-2-1. */
const greyCard = '#767676';

/** How far places of a photo differ in colour: what light reached against what was covered, a board inside and out. */
export function ColourTool({ context }: { context: BenchContext }) {
  return (
    <OnPhoto
      context={context}
      says="Choose a photo with both places in the same even light, and a gray card or the printed card beside them. Sample what light and air reached and what was covered, or one board inside and out."
    >
      {(laid) => <OnBoard key={laid.key} context={context} laid={laid} />}
    </OnPhoto>
  );
}

function OnBoard({ context, laid }: { context: BenchContext; laid: LaidPicture }) {
  const marks = useBenchMarks(`${context.piece.id}.colour.${laid.key}`);
  const [by, setBy] = useState<'card' | 'grey' | 'none'>('card');
  const [surface, setSurface] = useState<'pale-bare' | 'other'>('other');
  const card = useCard(laid.open.blob);
  const samples = marks.list.flatMap(({ id, name, points }) => {
    const region = id.startsWith('place-') ? regionOf(points, laid.open) : undefined;
    return region === undefined ? [] : [{ id: name, region }];
  });
  const patches =
    by === 'card' && card.found?.found
      ? cardRegions(card.found.image, card.found.world, laid.open)
      : by === 'grey'
        ? [regionOf(marks.of('grey'), laid.open)].flatMap((region) =>
            region === undefined ? [] : [{ region, nominal: greyCard }],
          )
        : [];
  const [exposed, setExposed] = useState('');
  const [covered, setCovered] = useState('');
  const first = samples.find(({ id }) => id === exposed) ?? samples[0];
  const second =
    samples.find(({ id }) => id === covered && id !== first?.id) ??
    samples.find(({ id }) => id !== first?.id);
  const input =
    first === undefined || second === undefined
      ? undefined
      : { patches, samples, compare: { exposed: first.id, protected: second.id }, surface };
  const calculated = usePictureCalculation(laid, photoColourBalance, input);
  const output = calculated.result?.ok ? calculated.result.output : undefined;
  const { comparison } = output ?? {};
  const findings =
    comparison &&
    findingsOf(context, {
      from: 'photo.colour-balance',
      surface,
      darkerByL: comparison.darkerByL,
      sigmaL: comparison.sigmaL,
    });
  const found: Found | undefined = output && {
    calculation: photoColourBalance,
    input: calculated.input,
    output,
    says: colourWords(output, first?.id ?? '', second?.id ?? ''),
    findings: findings ?? undefined,
    ...(laid.photo === undefined ? {} : { photo: laid.photo }),
    marks: marks.list,
  };
  const taken = marks.list.flatMap(({ id }) => Number(/^place-(\d+)$/.exec(id)?.[1] ?? 0));
  const next = Math.max(0, ...taken) + 1;
  const options = samples.map(({ id }) => ({ id, name: id }));
  return (
    <div className="photo-tool">
      <ChoiceField
        label="Put right by"
        value={by}
        save={setBy}
        choices={[
          { id: 'card', name: 'The printed card', note: 'By its six grays.' },
          { id: 'grey', name: 'A gray card', note: 'Of 18 in 100.' },
          { id: 'none', name: 'Nothing', note: 'Then compare within this photo only.' },
        ]}
      />
      {by === 'card' && <FindCard card={card} found={`${patches.length} of its grays can be used.`} />}
      <MarkButtons
        marks={marks}
        label="What to mark"
        wanted={[
          ...(by === 'grey' ? [{ id: 'grey', name: 'the gray card', kind: 'region' as const }] : []),
          { id: `place-${next}`, name: `place ${next}`, kind: 'region' },
        ]}
      />
      <PhotoBoard
        picture={laid.open}
        shows={laid.shows}
        marks={marks}
        over={(place) => (
          <g className="photo-over">
            {patches.map(({ region: { x, y, widthPx, heightPx } }) => {
              const [[left, top], [right, bottom]] = [
                place([x - 0.5, y - 0.5]),
                place([x + widthPx - 0.5, y + heightPx - 0.5]),
              ];
              return (
                <path
                  key={`${x} ${y}`}
                  className="photo-line"
                  strokeWidth="2"
                  d={`M${left} ${top}H${right}V${bottom}H${left}Z`}
                />
              );
            })}
          </g>
        )}
      />
      {samples.length < 2 && (
        <p className="said">
          Draw two places or more: what light reached, and what was covered; of one wood, clear of shadow,
          shine and dirt.
        </p>
      )}
      {samples.length >= 2 && (
        <div className="bench-fields">
          <PickField
            label="What light, air and hands reached"
            value={first?.id ?? ''}
            options={options}
            onPick={setExposed}
          />
          <PickField
            label="What was covered, or lies inside"
            value={second?.id ?? ''}
            options={options.filter(({ id }) => id !== first?.id)}
            onPick={setCovered}
          />
          <ChoiceField
            label="The surface"
            value={surface}
            save={setSurface}
            choices={[
              {
                id: 'pale-bare',
                name: 'Pale bare wood',
                note: 'It darkens with age, so the difference is weighed.',
              },
              { id: 'other', name: 'Another', note: 'It may darken or fade: only described.' },
            ]}
          />
        </div>
      )}
      <Under {...calculated} />
      {output !== undefined && first !== undefined && (
        <ColourList samples={output.samples} beside={first.id} knowledge={context.knowledge} />
      )}
      {found !== undefined && (
        <ResultSheet key={surface} context={context} found={found} title={`Colors in ${laid.title}`} />
      )}
    </div>
  );
}
