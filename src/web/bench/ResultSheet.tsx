import { useId, useState } from 'react';
import { capital } from '../../ground/words.ts';
import { basisWord } from '../../knowledge/basisWord.ts';
import { partName } from '../drawer/partName.ts';
import { TextField } from '../fields/TextField.tsx';
import { type BenchContext, enterFinding, type Findings, type Found, keepResult } from './benchContext.ts';

type Props = { context: BenchContext; found: Found; title: string; part?: string };

/** What a tool has found: in words, with its method and source, to be kept and to be entered as a finding. */
export function ResultSheet({ context, found, title, part }: Props) {
  const { findings } = found;
  const [name, setName] = useState('');
  const [said, setSaid] = useState('');
  const keep = () => {
    context.record(keepResult(crypto.randomUUID(), name.trim() || title, found, part));
    setSaid('Saved at the bench.');
  };
  return (
    <section className="sheet bench-result stack-tight" aria-label="What it says">
      <p className="said bench-says" role="status">
        {found.says}
      </p>
      {findings !== undefined && <Likelihoods findings={findings} />}
      {context.readOnly ? null : (
        <>
          {findings !== undefined && (
            <EnterAs
              key={findings.findings.map(({ sign }) => sign).join()}
              context={context}
              found={found}
              findings={findings}
            />
          )}
          <div className="row">
            <TextField label="Name" value={name} save={setName} note={`“${title}” where left empty.`} />
            <button type="button" className="button quiet" onClick={keep}>
              Keep at the bench
            </button>
            <span role="status" className="small">
              {said}
            </span>
          </div>
        </>
      )}
      <HowDone of={found.calculation} />
    </section>
  );
}

function Likelihoods({ findings: { findings, basis } }: { findings: Findings }) {
  const entries = Object.entries(findings[0]?.likelihoods ?? {}).toSorted((a, b) => b[1] - a[1]);
  const least = Math.min(...entries.map((each) => each[1]).filter((each) => each > 0));
  if (entries.length < 2 || !Number.isFinite(least)) return null;
  return (
    <p className="small">
      As probable, in proportion:{' '}
      {entries
        .map(([state, value]) => `${stateWords[state] ?? state} ${proportion(value / least)}`)
        .join(' · ')}
      . At most 99 to 1 is weighed. {basis.by === undefined ? '' : `${capital(basisWord(basis.by))}: `}
      {basis.why}
    </p>
  );
}

const stateWords: Record<string, string> = {
  present: 'if the sign is there',
  absent: 'if it is not',
  natural: 'if come with time and use',
  none: 'if fresh',
  imitated: 'if imitated',
  hand: 'if worked by hand',
  'early-machine': 'if by an early machine',
  'modern-machine': 'if by a modern machine',
  'of-the-making': 'if original',
  repair: 'if a repair',
  improve: 'if added to improve',
  'other-old': 'if from another old piece',
};

function proportion(value: number): string {
  return value >= 10 ? String(Math.round(value)) : value.toFixed(1).replace(/\.0$/, '');
}

type EnterAsProps = { context: BenchContext; found: Found; findings: Findings };

function EnterAs({ context, found, findings: { findings, places: all } }: EnterAsProps) {
  const id = useId();
  const places = all.flatMap(({ sign, part }) => {
    const finding = findings.find((each) => each.sign === sign);
    const isHere = part === null || context.parts.some(({ id }) => id === part);
    return finding !== undefined && isHere ? [{ finding, part: part ?? undefined }] : [];
  });
  const [at, setAt] = useState(0);
  const [said, setSaid] = useState('');
  const place = places[at] ?? places[0];
  if (place === undefined)
    return (
      <p className="small soft">No part of this form can show what this speaks of: keep it at the bench.</p>
    );
  const words = (each: typeof place) => `${each.finding.name}: ${partName(context.parts, each.part)}`;
  const enter = () => {
    context.record(enterFinding(place.finding, place.part, found, context.piece));
    setSaid(`Entered on ${partName(context.parts, place.part)}; the readings take it in as measured.`);
  };
  return (
    <div className="row">
      <div className="field">
        <label htmlFor={id}>Enter it as a finding</label>
        <select id={id} value={at} onChange={(change) => setAt(Number(change.target.value))}>
          {places.map((each, index) => (
            <option key={words(each)} value={index}>
              {capital(words(each))}
            </option>
          ))}
        </select>
      </div>
      <button type="button" className="button" onClick={enter}>
        Enter
      </button>
      <span role="status" className="small">
        {said}
      </span>
    </div>
  );
}

/** The method and source of a calculation, one touch below its result. */
function HowDone({ of: { method, source } }: { of: Found['calculation'] }) {
  return (
    <details className="bench-how">
      <summary>How it was calculated</summary>
      <p className="small">{method}</p>
      <p className="small">
        <strong>Source:</strong> {source}
      </p>
    </details>
  );
}
