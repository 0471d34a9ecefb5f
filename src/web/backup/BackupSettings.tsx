import { type FormEvent, useEffect, useId, useState } from 'react';
import type { BackupStatus } from '../../server/backup/backupKeeper.ts';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { askServer } from '../record/pieceServer.ts';
import { useReadOnly } from '../record/useReadOnly.ts';
import { copyWords } from './copyWords.ts';
import { type BackupJob, useBackupJob } from './useBackupJob.ts';
import { tellBackupsChanged, useBackups } from './useBackups.ts';

/** Back-ups: make one now, see how they stand, say where they go. */
export function BackupSettings() {
  return useReadOnly() === null ? <Backups /> : <NotHere />;
}

function NotHere() {
  return (
    <section className="stack" aria-labelledby="backups">
      <h2 id="backups">Back-ups</h2>
      <p className="soft">This record is open read-only: its back-ups are made where it is worked in.</p>
    </section>
  );
}

function Backups() {
  const { status } = useBackups();
  const { job, begin } = useBackupJob(status?.running ?? null);
  return (
    <section className="stack" aria-labelledby="backups">
      <h2 id="backups">Back-ups</h2>
      <p className="soft">
        These belong to the record on this computer. A back-up is a dated copy of everything: all pieces,
        every act, the photos, your own signs and shops, and issued opinions. Each is read back before it
        counts.
      </p>
      {status === undefined ? <p className="soft">Looking at the back-ups…</p> : <Standing status={status} />}
      <div className="row">
        <button
          type="button"
          className="button"
          disabled={status === undefined || job.stands === 'running'}
          onClick={() => void begin()}
        >
          Back up now
        </button>
      </div>
      <JobWords job={job} remarks={status?.remarks ?? []} />
      {status === undefined ? null : <Choices status={status} />}
    </section>
  );
}

function Standing({ status }: { status: BackupStatus }) {
  return (
    <div className="stack">
      {status.warning === null ? null : (
        <p className="caution" role="status">
          {status.warning.words}
        </p>
      )}
      <p>{copyWords(status)}</p>
    </div>
  );
}

function JobWords({ job, remarks }: { job: BackupJob; remarks: readonly string[] }) {
  const label = useId();
  if (job.stands === 'idle') return null;
  if (job.stands === 'failed')
    return (
      <p className="caution" role="alert">
        The back-up was not made. {job.message}
      </p>
    );
  if (job.stands === 'running')
    return (
      <p>
        <label htmlFor={label}>{job.step}</label> <progress id={label} value={job.done} max={job.total} />
      </p>
    );
  return (
    <div role="status">
      <p>Backed up, and read back: every file is as it was copied.</p>
      {remarks.map((remark) => (
        <p key={remark} className="doubt">
          {remark}
        </p>
      ))}
    </div>
  );
}

function Choices({ status }: { status: BackupStatus }) {
  const field = useId();
  const [folder, setFolder] = useState(status.folder);
  const [trouble, setTrouble] = useState('');
  useEffect(() => setFolder(status.folder), [status.folder]);
  const choose = async (choice: { folder?: string; daily?: boolean }) => {
    const asked = await askServer<BackupStatus>(fetch, '/api/backups/settings', choice);
    setTrouble(
      asked.came === 'answer'
        ? ''
        : asked.came === 'refusal'
          ? asked.message
          : 'Can’t reach Underside on this computer. Try again.',
    );
    tellBackupsChanged();
  };
  const keepFolder = (submit: FormEvent) => {
    submit.preventDefault();
    void choose({ folder });
  };
  return (
    <>
      <form className="field" onSubmit={keepFolder}>
        <label htmlFor={field}>Folder for back-ups</label>
        <span className="note" id={`${field}-note`}>
          {folder === status.usualFolder
            ? 'This is on the same disk as the record, and is lost with it. A folder on another disk is better: a drive you plug in, or one that your office copies.'
            : 'Write the whole path, as this computer’s file manager shows it.'}
        </span>
        <input
          id={field}
          type="text"
          value={folder}
          aria-describedby={`${field}-note`}
          autoComplete="off"
          spellCheck={false}
          onChange={(change) => setFolder(change.target.value)}
        />
        <div className="row">
          <button type="submit" className="button quiet" disabled={folder.trim() === status.folder}>
            Use this folder
          </button>
          {status.folder === status.usualFolder ? null : (
            <button type="button" className="button plain" onClick={() => void choose({ folder: '' })}>
              Use the usual one
            </button>
          )}
        </div>
      </form>
      {trouble === '' ? null : (
        <p className="caution" role="alert">
          {trouble}
        </p>
      )}
      <ChoiceField
        label="Back-ups by itself"
        note="Once a day while Underside runs, and again when you have entered nothing for a quarter of an hour. It keeps one of each of the last 7 days, 4 weeks and 12 months; those you make yourself stay until you remove them."
        choices={[
          { id: 'daily', name: 'Yes, every day' },
          { id: 'never', name: 'No, only when I ask' },
        ]}
        value={status.daily ? 'daily' : 'never'}
        save={(choice) => void choose({ daily: choice === 'daily' })}
      />
    </>
  );
}
