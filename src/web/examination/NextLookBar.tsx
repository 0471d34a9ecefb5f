import { useId, useState } from 'react';
import { isTelling, type NextLook } from '../../weighing/lookPlan.ts';
import type { WeighingNow } from '../weigh/useWeighing.ts';
import type { ExaminationContext } from './examinationContext.ts';
import { keepVisit, readVisit } from './keptVisit.ts';
import { LookButton } from './LookButton.tsx';
import { type Need, planLooks, type Visit } from './planLooks.ts';
import { TestSuspicion } from './TestSuspicion.tsx';

type Props = { context: ExaminationContext; weigh: WeighingNow; onGo: (look: NextLook) => void };

const leaves: [Need, string][] = [
  ['turned-over', 'It may not be turned over'],
  ['seat-lifted', 'The seat may not be lifted'],
  ['part-removed', 'Nothing may be taken out or off'],
  ['owners-leave', 'The owner allows nothing more'],
  ['laboratory', 'Nothing goes to a laboratory'],
];

const openVisit: Visit = { minutes: undefined, mayNot: ['laboratory'] };

/** What to look at next, always one glance away: how long it takes, whether leave is needed, what to mind. */
export function NextLookBar({ context, weigh, onGo }: Props) {
  const id = useId();
  const [open, setOpen] = useState(false);
  const fromPhotos = context.piece.mode === 'photo-only';
  const [visit, setVisit] = useState<Visit>(() => readVisit(context.piece.id) ?? openVisit);
  const plannedFor = fromPhotos ? { ...visit, mayNot: [] } : visit;
  const answered = new Set(Object.keys(context.piece.findings));
  const looks = weigh.nextLooks;
  const left = looks.filter(
    (look) => !answered.has(look.part === null ? look.sign : `${look.sign}@${look.part}`),
  );
  const plan = planLooks(left, plannedFor);
  const change = (next: Visit) => {
    setVisit(next);
    keepVisit(context.piece.id, next);
  };
  const first = plan[0];
  const go = (look: NextLook) => {
    setOpen(false);
    onGo(look);
  };
  return (
    <section
      className="exam-next"
      aria-label="Look next"
      data-open={open ? '' : undefined}
      onKeyDown={(event) => event.key === 'Escape' && setOpen(false)}
    >
      <div className="exam-next-line">
        {first === undefined ? (
          <p className="exam-next-none">{whyNone(weigh, left.filter(isTelling).length)}</p>
        ) : (
          <LookButton context={context} look={first.look} onGo={go} />
        )}
        <button
          type="button"
          className="button plain"
          aria-expanded={open}
          aria-controls={id}
          onClick={() => setOpen(!open)}
        >
          {open ? 'Less' : 'Plan'}
        </button>
      </div>
      {first?.look.caution !== undefined && <p className="caution small">{first.look.caution}</p>}
      <div id={id} hidden={!open} className="exam-next-more">
        {open && (
          <>
            <VisitChoices
              visit={visit}
              asked={
                fromPhotos
                  ? []
                  : leaves.filter(
                      ([need]) => need !== 'seat-lifted' || looks.some((look) => look.needs === need),
                    )
              }
              onVisit={change}
            />
            <TestSuspicion
              context={context}
              alterations={weigh.weighing?.alterations ?? []}
              visit={plannedFor}
              onSuspect={(suspected) => change({ ...visit, suspected })}
              onGo={go}
            />
            <h3 className="exam-plan-title">For the readings as a whole</h3>
            <ol className="exam-plan">
              {plan.slice(0, visit.minutes === undefined ? 12 : undefined).map(({ look, minutesGone }) => (
                <li key={`${look.sign}@${look.part}`}>
                  <LookButton context={context} look={look} onGo={go} gone={minutesGone} />
                </li>
              ))}
            </ol>
            <p className="small soft">Put first: what is expected to settle most for the minutes it takes.</p>
          </>
        )}
      </div>
    </section>
  );
}

type VisitProps = { visit: Visit; asked: typeof leaves; onVisit: (visit: Visit) => void };

function VisitChoices({ visit, asked, onVisit }: VisitProps) {
  const id = useId();
  return (
    <div className="exam-visit">
      <div className="exam-minutes">
        <label htmlFor={id}>I have</label>
        <input
          id={id}
          type="number"
          min={1}
          max={600}
          inputMode="numeric"
          value={visit.minutes ?? ''}
          onChange={(event) => {
            const minutes = Number.parseInt(event.target.value, 10);
            onVisit({ ...visit, minutes: Number.isFinite(minutes) && minutes > 0 ? minutes : undefined });
          }}
        />
        <span>minutes</span>
      </div>
      <fieldset className="exam-leaves" hidden={asked.length === 0}>
        <legend className="unseen">Not allowed on this visit</legend>
        {asked.map(([need, words]) => (
          <label key={need} className="choice">
            <input
              type="checkbox"
              checked={visit.mayNot.includes(need)}
              onChange={(event) =>
                onVisit({
                  ...visit,
                  mayNot: event.target.checked
                    ? [...visit.mayNot, need]
                    : visit.mayNot.filter((each) => each !== need),
                })
              }
            />
            {words}
          </label>
        ))}
      </fieldset>
    </div>
  );
}

function whyNone(weigh: WeighingNow, left: number): string {
  if (weigh.faults.length > 0) return `What to look at next can’t be said: ${weigh.faults[0]?.message ?? ''}`;
  if (!weigh.full && weigh.nextLooks.length === 0)
    return 'The findings are being weighed; what to look at next follows.';
  return left === 0
    ? 'Every sign that could tell was looked for.'
    : 'Nothing more would tell within this time and what is allowed.';
}
