import { counted } from '../../ground/words.ts';
import { citeFull, sortKey } from '../citeWork.ts';
import type { Section } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';

/** Every work that the figures and entries used for this piece cite, with how far it was read. */
export function sourcesSection(material: OpinionMaterial): Section {
  const { sources } = material.knowledge;
  const works = [...citedIds(material)]
    .flatMap((id) => (sources[id] === undefined ? [] : [sources[id]]))
    .toSorted((a, b) => (sortKey(a) < sortKey(b) ? -1 : 1));
  const unread = works.filter((work) => work.read !== 'whole').length;
  return {
    id: 'sources',
    title: 'Sources',
    appendix: true,
    blocks:
      works.length === 0
        ? [{ kind: 'paragraph', as: 'note', words: 'No works are cited.' }]
        : [
            {
              kind: 'paragraph',
              words: `${counted(works.length, 'work')} stand behind the signs, the form, the alterations and the shops named here; ${unread} of them ${unread === 1 ? 'was' : 'were'} read in part only or not at all, and each says so. Grades: A statute, court, patent, peer-reviewed work or museum record; B museum or government text, handbook or teaching site; C trade press or craftsman under a name; D popular page.`,
            },
            { kind: 'list', as: 'works', items: works.map(citeFull) },
          ],
  };
}

function citedIds({ piece, weighing, knowledge, form }: OpinionMaterial): Set<string> {
  const signs = Object.values(piece.findings).map((finding) => knowledge.signs[finding.sign]);
  const alterations = (weighing?.alterations ?? [])
    .filter((each) => each.probability >= 0.1)
    .map((each) => knowledge.alterations[each.id]);
  const shops = (weighing?.shops ?? [])
    .filter((each) => each.probability >= 0.1)
    .map((each) => knowledge.shops[each.id]);
  const cited = new Set<string>();
  for (const entry of [form, ...signs, ...alterations, ...shops]) collect(entry, cited);
  return cited;
}

/** Every `source` and `sources` in an entry, at any depth. */
function collect(value: unknown, into: Set<string>): void {
  if (value === null || typeof value !== 'object') return;
  for (const [key, each] of Object.entries(value)) {
    if (key === 'source' && typeof each === 'string') into.add(each);
    else if (key === 'sources' && Array.isArray(each)) for (const id of each) into.add(String(id));
    else collect(each, into);
  }
}
