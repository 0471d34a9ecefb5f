import { useLocation, useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { partsOf } from '../../drawing/partsOf.ts';
import { useKnowledge } from '../knowledge/useKnowledge.ts';
import { usePiece } from '../record/usePiece.ts';
import { Notice } from '../shell/Notice.tsx';
import { pieceTitle } from '../shell/pieceTitle.ts';
import { Tabs } from '../shell/Tabs.tsx';
import { usePageTitle } from '../shell/usePageTitle.ts';
import { usePieceId } from '../shell/usePieceId.ts';
import { useWeighing } from '../weigh/useWeighing.ts';
import { AsksTab } from './asks/AsksTab.tsx';
import type { ExaminationContext } from './examinationContext.ts';
import { MeasuresTab } from './measures/MeasuresTab.tsx';
import { measuresOf } from './measures/readMeasure.ts';
import { NextLookBar } from './NextLookBar.tsx';
import { OwnTab } from './own/OwnTab.tsx';
import { PartsTab } from './PartsTab.tsx';
import { PhotosTab } from './photos/PhotosTab.tsx';
import { usePhotoUploads } from './photos/usePhotoUploads.ts';
import { placeFromHash, placeToHash } from './placeInHash.ts';
import { recorderOf } from './recorder.ts';
import './answerButtons.css';
import './drawing.css';
import './nextLook.css';
import './panel.css';
import './photos.css';
import './examination.css';

/** The examination of a piece: the piece itself is the menu. */
export function ExaminationPage() {
  const used = usePiece(usePieceId());
  const { forms } = useKnowledge();
  const { piece } = used;
  if (piece === undefined) return null;
  if (forms[piece.form] === undefined) {
    return (
      <Notice
        title="Unknown form"
        words={`The form “${piece.form}” is not in the knowledge files, so its parts and signs are not known.`}
      />
    );
  }
  return <Examination {...used} piece={piece} />;
}

type Ready = ReturnType<typeof usePiece> & { piece: NonNullable<ReturnType<typeof usePiece>['piece']> };

function Examination({ piece, readOnly, record, trouble }: Ready) {
  const knowledge = useKnowledge();
  const form = knowledge.forms[piece.form];
  usePageTitle('Examination', pieceTitle(piece));
  const take = recorderOf(record, readOnly);
  const uploads = usePhotoUploads(piece, take, { isAway: trouble, readOnly });
  const weigh = useWeighing(piece, 'looks');
  const navigate = useNavigate();
  const place = placeFromHash(useLocation({ select: (location) => location.hash }));
  const [tab, setTab] = useState('parts');
  if (form === undefined) return null;
  const context: ExaminationContext = {
    piece,
    readOnly,
    knowledge,
    parts: partsOf(form, piece.features),
    record: take,
    uploads,
  };
  const go = (part: string | undefined, sign?: string) => {
    setTab('parts');
    void navigate({
      to: '.',
      hash: placeToHash({ part, sign }),
      replace: true,
      resetScroll: false,
      hashScrollIntoView: false,
    });
  };
  const measures = measuresOf(form, piece.features);
  const measured = measures.filter(({ id }) => piece.measures[id] !== undefined).length;
  return (
    <div className="exam" data-tab={tab}>
      <h1 className="unseen">Examination</h1>
      <NextLookBar context={context} weigh={weigh} onGo={(look) => go(look.part ?? 'whole', look.sign)} />
      {form.cautions.length > 0 && (
        <details className="exam-cautions">
          <summary>Handling cautions</summary>
          {form.cautions.map((caution) => (
            <p key={caution} className="caution small">
              {caution}
            </p>
          ))}
        </details>
      )}
      <Tabs
        label="Examination"
        open={tab}
        onOpen={setTab}
        tabs={[
          {
            id: 'parts',
            name: 'Parts and signs',
            panel: () => (
              <PartsTab context={context} form={form} first={weigh.first} place={place} onGo={go} />
            ),
          },
          {
            id: 'photos',
            name: `Photos (${Object.keys(piece.photos).length})`,
            panel: () => <PhotosTab context={context} />,
          },
          {
            id: 'measures',
            name: `Measures (${measured} of ${measures.length})`,
            panel: () => <MeasuresTab context={context} />,
          },
          {
            id: 'own',
            name: `Your own (${Object.keys(piece.observations).length})`,
            panel: () => <OwnTab context={context} />,
          },
          ...(piece.mode === 'photo-only'
            ? [
                {
                  id: 'asks',
                  name: 'What to ask for',
                  panel: () => <AsksTab context={context} weigh={weigh} />,
                },
              ]
            : []),
        ]}
      />
    </div>
  );
}
