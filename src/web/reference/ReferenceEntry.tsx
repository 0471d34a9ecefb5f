import { useKnowledge } from '../knowledge/useKnowledge.ts';
import { AlterationEntry } from './AlterationEntry.tsx';
import { FormEntry } from './FormEntry.tsx';
import { ShopEntry } from './ShopEntry.tsx';
import { SignEntry } from './SignEntry.tsx';
import { SourceEntry } from './SourceEntry.tsx';
import type { ShelfId } from './shelves.ts';
import { WoodEntry } from './WoodEntry.tsx';

/** One entry of the reference books, written out. */
export function ReferenceEntry({ shelf, id }: { shelf: ShelfId; id: string }) {
  const { signs, forms, alterations, shops, woods, sources } = useKnowledge();
  const sign = shelf === 'signs' ? signs[id] : undefined;
  if (sign !== undefined) return <SignEntry sign={sign} />;
  const form = shelf === 'forms' ? forms[id] : undefined;
  if (form !== undefined) return <FormEntry key={id} form={form} />;
  const wood = shelf === 'woods' ? woods[id] : undefined;
  if (wood !== undefined) return <WoodEntry wood={wood} />;
  const alteration = shelf === 'alterations' ? alterations[id] : undefined;
  if (alteration !== undefined) return <AlterationEntry alteration={alteration} />;
  const shop = shelf === 'shops' ? shops[id] : undefined;
  if (shop !== undefined) return <ShopEntry shop={shop} />;
  const work = shelf === 'sources' ? sources[id] : undefined;
  if (work !== undefined) return <SourceEntry work={work} />;
  return (
    <p className="said">
      There is no entry under this address: it may come from other knowledge files than these.
    </p>
  );
}
