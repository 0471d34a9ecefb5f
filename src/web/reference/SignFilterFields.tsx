import { useNavigate } from '@tanstack/react-router';
import { capital } from '../../ground/words.ts';
import { causes, need } from '../../knowledge/schema.ts';
import { tellsOf } from '../examination/figureWords.ts';
import { PickField } from '../fields/PickField.tsx';
import { useKnowledge } from '../knowledge/useKnowledge.ts';
import { kindWords, needsWords } from './plainWords.ts';
import { kindsToChoose, type SignFilters } from './signFilters.ts';

const any = { id: '', name: 'Any' };

/** What the shelf of signs is narrowed by; kept in the address, so that a narrowed shelf can be linked to. */
export function SignFilterFields({ filters }: { filters: SignFilters }) {
  const { forms, alterations } = useKnowledge();
  const go = useNavigate();
  const pick = (filter: keyof SignFilters) => (id: string) => {
    const { [filter]: _, ...others } = filters;
    void go({
      to: '/reference',
      search: { shelf: 'signs', ...others, ...(id === '' ? {} : { [filter]: id }) },
      replace: true,
    });
  };
  const set = Object.keys(filters).length;
  return (
    <details className="filters" open={set > 0 ? true : undefined}>
      <summary>{set === 0 ? 'Narrow the shelf' : `Narrowed by ${set}`}</summary>
      <div className="filter-fields">
        <PickField
          label="Asked of"
          value={filters.of ?? ''}
          options={[any, ...Object.values(forms).map(({ id, name }) => ({ id, name }))]}
          onPick={pick('of')}
        />
        <PickField
          label="On"
          value={filters.on ?? ''}
          options={[
            any,
            ...kindsToChoose(forms, filters.of).map((id) => ({ id, name: capital(kindWords(id)) })),
          ]}
          onPick={pick('on')}
        />
        <PickField
          label="Tells of"
          value={filters.cause ?? ''}
          options={[
            any,
            ...causes.map((id) => ({ id, name: capital(tellsOf(id, alterations)) })),
            { id: 'alteration', name: 'An alteration' },
          ]}
          onPick={pick('cause')}
        />
        <PickField
          label="Looked for"
          value={filters.needs ?? ''}
          options={[any, ...need.options.map((id) => ({ id, name: capital(needsWords(id)) }))]}
          onPick={pick('needs')}
        />
        {set === 0 ? null : (
          <button
            type="button"
            className="button plain"
            onClick={() => void go({ to: '/reference', search: { shelf: 'signs' }, replace: true })}
          >
            Show all signs
          </button>
        )}
      </div>
    </details>
  );
}
