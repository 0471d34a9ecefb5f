import { askedOf } from '../../knowledge/askedOf.ts';
import type { Form, Knowledge, Sign } from '../../knowledge/schema.ts';
import type { ReferenceSearch } from './referenceSearch.ts';
import type { Group } from './shelves.ts';

/** What the shelf of signs is narrowed to: signs asked of a form, on a kind of part, by what they hang on and need. */
export type SignFilters = Pick<ReferenceSearch, 'of' | 'on' | 'cause' | 'needs'>;

/** The filters an address asks for, without those it leaves open. */
export function filtersIn(search: ReferenceSearch): SignFilters {
  const { of, on, cause, needs } = search;
  return Object.fromEntries(
    Object.entries({ of, on, cause, needs }).filter(([, value]) => value !== undefined && value !== ''),
  );
}

/** The groups with only the signs that pass every filter; empty groups fall away. */
export function groupsThatPass(
  groups: readonly Group[],
  filters: SignFilters,
  knowledge: Knowledge,
): Group[] {
  if (Object.keys(filters).length === 0) return [...groups];
  const form = filters.of === undefined ? undefined : knowledge.forms[filters.of];
  return groups
    .map((group) => ({
      name: group.name,
      entries: group.entries.filter(({ id }) => {
        const sign = knowledge.signs[id];
        return sign !== undefined && passes(sign, filters, form);
      }),
    }))
    .filter((group) => group.entries.length > 0);
}

/** The kinds of part a person can choose: of the form, or of every form; sorted, the whole piece first. */
export function kindsToChoose(forms: Knowledge['forms'], of: string | undefined): string[] {
  const some = of === undefined ? Object.values(forms) : [forms[of]];
  const kinds = new Set(some.flatMap((form) => form?.parts.map((part) => part.kind) ?? []));
  return ['whole', ...[...kinds].sort()];
}

function passes(sign: Sign, { of, on, cause, needs }: SignFilters, form: Form | undefined): boolean {
  const kinds = form === undefined ? [] : ['whole', ...form.parts.map((part) => part.kind)];
  return (
    (of === undefined || (form !== undefined && kinds.some((kind) => askedOf(sign, kind, form)))) &&
    (on === undefined || sign.on.includes(on)) &&
    (cause === undefined ||
      sign.hangsOn === cause ||
      (cause === 'alteration' && sign.hangsOn.startsWith('alteration/'))) &&
    (needs === undefined || sign.needs === needs)
  );
}
