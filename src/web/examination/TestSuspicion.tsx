import type { NextLook } from '../../weighing/lookPlan.ts';
import { outOf, probableWords } from '../../weighing/probabilityWords.ts';
import type { SuspicionLook } from '../../weighing/suspicion.ts';
import type { Weighing } from '../../weighing/weighing.ts';
import { PickField } from '../fields/PickField.tsx';
import { useSuspicion } from '../weigh/useSuspicion.ts';
import type { ExaminationContext } from './examinationContext.ts';
import { LookButton } from './LookButton.tsx';
import { planLooks, type Visit } from './planLooks.ts';

type Props = {
  context: ExaminationContext;
  /** Those the piece can have had, with how probable each is now. */
  alterations: Weighing['alterations'];
  visit: Visit;
  onSuspect: (alteration: string | undefined) => void;
  onGo: (look: NextLook) => void;
};

/** One alteration tested by itself: how probable it is now, what would settle it, and what each answer would make of it. */
export function TestSuspicion({ context, alterations, visit, onSuspect, onGo }: Props) {
  const suspected = alterations.find(({ id }) => id === visit.suspected);
  const { answer, behind } = useSuspicion(context.piece, suspected?.id);
  if (alterations.length === 0) return null;
  const byName = alterations.toSorted((a, b) => a.name.localeCompare(b.name));
  return (
    <section className="exam-suspicion" aria-label="The suspicion tested">
      <PickField
        label="Test a suspicion"
        value={suspected?.id ?? ''}
        options={[{ id: '', name: 'None: plan for all readings' }, ...byName]}
        onPick={(id) => onSuspect(id === '' ? undefined : id)}
      />
      {suspected === undefined ? null : (
        <>
          <p aria-live="polite">
            {suspected.name}: <strong>{probableWords(suspected.probability)}</strong> by what has been found
            so far.
          </p>
          {answer === undefined ? (
            <p className="soft small">What would settle it is being worked out…</p>
          ) : answer.ok ? (
            <Looks context={context} looks={answer.output.looks} visit={visit} behind={behind} onGo={onGo} />
          ) : (
            <p className="fault">{answer.faults[0]?.message}</p>
          )}
        </>
      )}
    </section>
  );
}

type LooksProps = Pick<Props, 'context' | 'visit' | 'onGo'> & {
  looks: readonly SuspicionLook[];
  behind: boolean;
};

function Looks({ context, looks, visit, behind, onGo }: LooksProps) {
  const plan = planLooks(looks, visit).map(({ look }) => look as SuspicionLook);
  if (plan.length === 0)
    return (
      <p className="soft small">
        No sign left to look for tells anything of it within the time and leave of this visit.
      </p>
    );
  return (
    <>
      <ol className="exam-plan" aria-busy={behind}>
        {plan.map((look) => (
          <li key={`${look.sign}@${look.part}`}>
            <LookButton
              context={context}
              look={look}
              onGo={onGo}
              makes={`Found: ${outOf(look.ifFound)}. Looked for and not found: ${outOf(look.ifNot)}.`}
            />
          </li>
        ))}
      </ol>
      <p className="small soft">
        Each answer by itself, with the best figures; what settles a suspicion may tell little of the
        readings.
      </p>
    </>
  );
}
