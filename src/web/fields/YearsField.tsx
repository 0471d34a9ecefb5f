import { formatYears, parseYears, type YearSpan } from '../../units/years.ts';
import { ReadField } from './ReadField.tsx';

type YearsFieldProps = {
  label: string;
  note?: string;
  value: YearSpan | undefined;
  save: (years: [number, number] | undefined) => void;
  readOnly?: boolean;
  /** True where `save` makes no act: the text then stays on this device until its page lets it go. */
  holds?: boolean;
};

/** Years as the trade writes them: `1775`, `1760–1790`, `1760s`, `about 1775`. What can't be read is asked about. */
export function YearsField({ value, ...field }: YearsFieldProps) {
  return (
    <ReadField
      {...field}
      written={value === undefined ? '' : formatYears(value)}
      read={(text) => {
        const read = parseYears(text);
        return read.ok ? { ok: true, value: [read.years[0], read.years[1]] as [number, number] } : read;
      }}
    />
  );
}
