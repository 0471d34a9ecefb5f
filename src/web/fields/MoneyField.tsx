import { formatMoney, parseMoney } from '../../units/money.ts';
import { ReadField } from './ReadField.tsx';

type MoneyFieldProps = {
  label: string;
  note?: string;
  value: number | undefined;
  save: (cents: number | undefined) => void;
  readOnly?: boolean;
};

/** A sum of dollars as people write it, kept in cents; what can’t be read is asked about. */
export function MoneyField({ value, ...field }: MoneyFieldProps) {
  return (
    <ReadField
      {...field}
      inputMode="decimal"
      written={value === undefined ? '' : formatMoney(value)}
      read={(text) => {
        const read = parseMoney(text);
        return read.ok ? { ok: true, value: read.cents } : read;
      }}
    />
  );
}
