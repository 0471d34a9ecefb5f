import { ReadField } from './ReadField.tsx';

type PercentFieldProps = {
  label: string;
  unit?: string;
  note?: string;
  value: number | undefined;
  save: (value: number | undefined) => void;
  readOnly?: boolean;
  /** True where it may lower: −5. */
  signed?: boolean;
};

/** A percentage or a plain number, kept as it is typed. */
export function PercentField({
  label,
  unit = 'percent',
  value,
  signed = false,
  ...field
}: PercentFieldProps) {
  const [least, most] = signed ? [-100, 1000] : [0, 100];
  return (
    <ReadField
      {...field}
      label={`${label} (${unit})`}
      written={value === undefined ? '' : String(value)}
      read={(text) => {
        const plain = text.trim().replace('−', '-').replace('%', '').replace(',', '.').trim();
        const number = Number(plain);
        return plain !== '' && number >= least && number <= most
          ? { ok: true, value: number }
          : { ok: false, message: `Write a number from ${signed ? '−100 to 1000' : '0 to 100'}.` };
      }}
    />
  );
}
