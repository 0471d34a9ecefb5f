/** A number as a fraction of whole numbers, so that nothing is rounded before the end. */
type Fraction = { numerator: number; denominator: number };

/**
 * A length in plain signs, in millimetres as a fraction of whole numbers.
 *
 * @returns the fraction; a sentence where it can be read in two ways; undefined where it is no length at all
 */
export function writtenLength(plain: string): Fraction | string | undefined {
  return metric(plain) ?? imperial(plain);
}

const mmPerMetric: Record<string, Fraction> = {
  mm: { numerator: 1, denominator: 1 },
  cm: { numerator: 10, denominator: 1 },
  m: { numerator: 1000, denominator: 1 },
};

const metricUnit = /^(.*?) ?(mm|cm|m|millimet(?:re|er)s?|centimet(?:re|er)s?|met(?:re|er)s?)\.?$/;

/** Millimetres, centimetres, metres; a sentence where the number can't stand; undefined where no metric unit is written. */
function metric(plain: string): Fraction | string | undefined {
  const found = metricUnit.exec(plain);
  if (!found) return undefined;
  const written = found[1] ?? '';
  const unit =
    found[2]?.startsWith('mm') || found[2]?.startsWith('mil') ? 'mm' : found[2]?.startsWith('c') ? 'cm' : 'm';
  if (/^[1-9]\d{0,2},\d{3}$/.test(written)) {
    const [left, right] = written.split(',');
    return `${written} ${unit} can be read in two ways: write ${left}${right} ${unit} or ${left}.${right} ${unit}.`;
  }
  const number = decimal(written.replace(',', '.'));
  if (number === undefined) return undefined;
  const factor = mmPerMetric[unit];
  return (
    factor && {
      numerator: number.numerator * factor.numerator,
      denominator: number.denominator * factor.denominator,
    }
  );
}

const imperialShape =
  /^(?:([\d.]+) ?(?:ft\.?|feet|foot|') ?(?:-|and |, ?)? ?)?(?:([\d./ -]+?(?: and [\d/]+)?) ?(?:in\.?|inch|inches|")?)?$/;

/** Inches, or feet and inches; a sentence where the number can't stand; undefined where the text is neither. */
function imperial(plain: string): Fraction | string | undefined {
  if (/\d,\d/.test(plain)) {
    return `“${plain}” has a comma: write inches with a fraction or a point, 37 1/2 or 37.5, or add mm or cm.`;
  }
  const found = imperialShape.exec(plain);
  if (!found || (found[1] === undefined && found[2] === undefined)) return undefined;
  const feet = found[1] === undefined ? { numerator: 0, denominator: 1 } : decimal(found[1]);
  const inches = found[2] === undefined ? { numerator: 0, denominator: 1 } : inchNumber(found[2].trim());
  if (feet === undefined || inches === undefined) return undefined;
  if (typeof inches === 'string') return inches;
  if (found[1] !== undefined && inches.numerator >= 12 * inches.denominator) {
    return 'After feet the inches run from 0 to less than 12: write 3 ft 1 1/8 in, or all of it in inches, 37 1/8.';
  }
  const numerator = 12 * feet.numerator * inches.denominator + inches.numerator * feet.denominator;
  return { numerator: numerator * 127, denominator: feet.denominator * inches.denominator * 5 };
}

function inchNumber(written: string): Fraction | string | undefined {
  const plainNumber = decimal(written);
  if (plainNumber) return plainNumber;
  const found = /^(?:(\d+)(?: ?- ?| and | ))?(\d+)\/(\d+)$/.exec(written);
  if (!found) return undefined;
  const [whole, over, under] = [
    found[1] === undefined ? undefined : Number(found[1]),
    Number(found[2]),
    Number(found[3]),
  ];
  if (under < 2 || under > 64)
    return `“${written}” has a fraction no rule shows: write halves to sixty-fourths, 37 1/8.`;
  if (over >= under && (whole !== undefined || over > 9)) {
    return `“${written}” can’t be read for certain: write the whole inches, a space and the fraction, 37 1/8.`;
  }
  return { numerator: (whole ?? 0) * under + over, denominator: under };
}

/** `37`, `37.125`, `.5` as a fraction of whole numbers. */
function decimal(written: string): Fraction | undefined {
  const found = /^(\d{0,9})(?:\.(\d{0,6}))?$/.exec(written);
  if (!found || (!found[1] && !found[2])) return undefined;
  const places = found[2]?.length ?? 0;
  return { numerator: Number(`${found[1]}${found[2] ?? ''}`), denominator: 10 ** places };
}
