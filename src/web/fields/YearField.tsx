import { ReadField } from './ReadField.tsx';

type YearFieldProps = {
  label: string;
  value: number | undefined;
  save: (year: number | undefined) => void;
  readOnly?: boolean;
};

/** One year in four figures, or empty where it is not known. */
export function YearField({ value, ...field }: YearFieldProps) {
  return (
    <ReadField
      {...field}
      inputMode="numeric"
      written={value === undefined ? '' : String(value)}
      read={(text) =>
        /^[12]\d{3}$/.test(text.trim())
          ? { ok: true, value: Number(text.trim()) }
          : { ok: false, message: 'Write one year in four figures, or leave it empty.' }
      }
    />
  );
}
