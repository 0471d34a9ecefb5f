import { expect, it } from 'vitest';
import { testApp } from '../kits/testApp.ts';

it('answers the guide of a form as a PDF, and says in words where there is none', async () => {
  const { get } = await testApp();
  const guide = await get('/api/field-guide.pdf?family=saw-marks');
  expect(guide.status).toBe(200);
  expect(guide.headers.get('content-type')).toBe('application/pdf');
  expect(guide.headers.get('content-disposition')).toContain('field-guide-saw-marks.pdf');
  expect(
    Buffer.from(await guide.arrayBuffer())
      .subarray(0, 5)
      .toString(),
  ).toBe('%PDF-');
  const none = await get('/api/field-guide.pdf?form=throne');
  expect(none.status).toBe(404);
  expect(((await none.json()) as { faults: { message: string }[] }).faults[0]?.message).toMatch(
    /^There is no such form/,
  );
});
