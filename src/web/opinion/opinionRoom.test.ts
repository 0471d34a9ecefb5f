import { describe, expect, test } from 'vitest';
import type { Weighing } from '../../evidence/weighing.ts';
import { piece } from '../../piece/piece.ts';
import { departs, lacksForSigning } from './opinionRoom.ts';

const weighing = { leading: 'later-machine-copy' } as Weighing;
const of = (opinion: object) => piece.parse({ id: 'p', form: 'side-chair', opinion });

describe('before an opinion is signed', () => {
  test('asks for reading, conclusion and reasons', () => {
    expect(lacksForSigning({ piece: of({}), weighing })).toEqual([
      'choose the reading you conclude on',
      'write the conclusion',
      'give your reasons',
    ]);
  });

  test('asks why it departs from the findings, only where it does', () => {
    const written = { conclusion: 'A chair.', reasons: 'Its joints.' };
    const other = of({ ...written, reading: 'period-intact' });
    expect(departs({ piece: other, weighing })).toBe(true);
    expect(lacksForSigning({ piece: other, weighing })).toEqual([
      'say why you depart from what the findings say',
    ]);
    expect(lacksForSigning({ piece: other, weighing: undefined })).toEqual([]);
    expect(lacksForSigning({ piece: of({ ...written, reading: 'later-machine-copy' }), weighing })).toEqual(
      [],
    );
    expect(
      lacksForSigning({
        piece: of({ ...written, reading: 'period-intact', departure: 'A bill of 1771.' }),
        weighing,
      }),
    ).toEqual([]);
  });
});
