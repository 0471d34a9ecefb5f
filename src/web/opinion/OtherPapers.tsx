import { useEffect, useRef, useState } from 'react';
import {
  type PaperForm,
  type PaperKind,
  paperForms,
  paperFormWords,
  paperKinds,
  paperWords,
} from '../../engagement/papers.ts';
import { PickField } from '../fields/PickField.tsx';
import { Progress } from '../signing/Progress.tsx';
import type { OpinionContext } from './opinionContext.ts';
import { useJob } from './useJob.ts';

/** The other papers that can be made of this piece, in the form that is wanted. */
export function OtherPapers({ context }: { context: OpinionContext }) {
  const { piece, used } = context;
  const [paper, setPaper] = useState<PaperKind>('condition');
  const [form, setForm] = useState<PaperForm>('pdf');
  const { job, begin } = useJob(
    `/api/pieces/${encodeURIComponent(piece.id)}/opinion`,
    'The paper could not be made:',
  );
  const link = useRef<HTMLAnchorElement>(null);
  useEffect(() => {
    if (job.stands === 'done') link.current?.click();
  }, [job]);
  const behind = used.saving !== 'saved';
  return (
    <section className="stack-tight sheet" aria-labelledby="other-papers">
      <h2 id="other-papers">Other papers</h2>
      <PickField
        label="Which paper"
        value={paper}
        options={paperKinds.map((id) => ({ id, name: paperWords[id].name }))}
        onPick={(id) => setPaper(paperKinds.find((each) => each === id) ?? paper)}
      />
      <p className="soft">{paperWords[paper].says}</p>
      <PickField
        label="In which form"
        value={form}
        options={paperForms.map((id) => ({ id, name: paperFormWords[id] }))}
        onPick={(id) => setForm(paperForms.find((each) => each === id) ?? form)}
      />
      <div className="row">
        <button
          type="button"
          className="button"
          disabled={behind || job.stands === 'running'}
          onClick={() => void begin({ paper, as: form })}
        >
          {job.stands === 'running' ? 'Making it…' : 'Make it'}
        </button>
      </div>
      <p className="soft small">
        {behind
          ? 'Waits until the record has every entry.'
          : 'Made from the record as it stands now, and marked as a draft: only the signed report binds you.'}
      </p>
      <Progress job={job} />
      <p role="status">
        {job.stands === 'done' ? (
          <>
            It is ready.{' '}
            <a ref={link} href={job.file} download>
              Save it
            </a>
          </>
        ) : null}
      </p>
    </section>
  );
}
