import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type FindingState, finding, findingState } from '../../piece/finding.ts';
import { foldEvents } from '../../piece/fold.ts';
import { answerSign, putInWords, sayHowSure } from './answerSign.ts';

const question = { sign: 'dowelled-joint', part: 'side-stretcher-left' };
const key = 'dowelled-joint@side-stretcher-left';

describe('answering a sign', () => {
  it('records a whole finding in one act', () => {
    const act = answerSign(question, undefined, 'present', false);
    expect(act.kind).toBe('finding-recorded');
    expect(finding.parse(act.changes[0]?.to)).toMatchObject({
      id: key,
      state: 'present',
      sure: 'plain',
      inPhotoOnly: false,
    });
  });

  it('keys a sign of the whole piece by the sign alone', () => {
    const act = answerSign({ sign: 'overall-size' }, undefined, 'absent', false);
    expect(act.changes[0]?.path).toEqual(['findings', 'overall-size']);
    expect(finding.parse(act.changes[0]?.to).part).toBeUndefined();
  });

  it('takes what is seen only in a photograph for a hint', () => {
    const act = answerSign(question, undefined, 'present', true);
    expect(finding.parse(act.changes[0]?.to)).toMatchObject({ sure: 'hint', inPhotoOnly: true });
  });

  it('withdraws on the same answer again and keeps words and sureness on another', () => {
    const first = finding.parse(answerSign(question, undefined, 'present', false).changes[0]?.to);
    const worded = finding.parse(putInWords(first, 'dowel end at the back').changes[0]?.to);
    const sure = finding.parse(sayHowSure(worded, 'fairly').changes[0]?.to);
    expect(answerSign(question, sure, 'present', false)).toEqual({
      kind: 'finding-withdrawn',
      changes: [{ path: ['findings', key] }],
    });
    const turned = finding.parse(answerSign(question, sure, 'absent', false).changes[0]?.to);
    expect(turned).toEqual({ ...sure, state: 'absent' });
  });

  it('leaves the last answer standing after any row of touches (property)', () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(...findingState.options), { minLength: 1, maxLength: 12 }),
        (touches) => {
          let state: unknown = {};
          let expected: FindingState | undefined;
          for (const touch of touches) {
            const before = (state as { findings?: Record<string, unknown> }).findings?.[key];
            const act = answerSign(
              question,
              before === undefined ? undefined : finding.parse(before),
              touch,
              false,
            );
            state = foldEvents(state as never, [act]);
            expected = expected === touch ? undefined : touch;
          }
          const after = (state as { findings: Record<string, { state: string }> }).findings[key]?.state;
          expect(after).toBe(expected);
        },
      ),
      { seed: 11 },
    );
  });
});
