import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { typstString, typstWords } from '../../src/opinion/typst/typstText.ts';

const compiler = NodeCompiler.create({ workspace: '/underside-opinion-has-no-folder' });

/** What Typst itself holds a source's strings to be. */
function readBack(literals: readonly string[]): unknown[] {
  const source = literals.map((literal) => `#metadata(${literal}) <said>`).join('\n');
  return compiler.query({ mainFileContent: source }, { selector: '<said>', field: 'value' });
}

/** What should come out: as it went in, but for line ends and what no font can set. */
function expected(text: string): string {
  return [...text.replace(/[\t\n\r\u2028\u2029]+/g, ' ')]
    .map((sign) => {
      const code = sign.codePointAt(0) ?? 0;
      const control = code < 0x20 || (code >= 0x7f && code < 0xa0);
      const surrogate = code >= 0xd800 && code <= 0xdfff;
      const never = (code & 0xfffe) === 0xfffe || (code >= 0xfdd0 && code <= 0xfdef);
      return control || surrogate || never ? '\u{FFFD}' : sign;
    })
    .join('');
}

const hostile = [
  '#read("/etc/passwd")',
  '"); #read("/etc/passwd") //',
  '\\"); #panic("out") //',
  '\\',
  '\\\\"',
  '\\u{22}) #panic()',
  '$x^2$ *bold* _em_ `raw` <label> @ref',
  '[#eval("1+1")]',
  '/* comment */ // line',
  '#import "@preview/anything:1.0.0": *',
  'end of text\u0000\u0007',
  '\u202Eright to left',
  '#{ while true {} }',
];

describe('what was typed is text in Typst and nothing else', () => {
  it('comes back sign for sign, hostile or not', () => {
    expect(readBack(hostile.map(typstString))).toEqual(hostile.map(expected));
  });

  it('comes back for any string at all', () => {
    fc.assert(
      fc.property(
        fc.array(fc.oneof(fc.string({ unit: 'binary' }), fc.string({ unit: 'binary-ascii' }), fc.string()), {
          minLength: 1,
          maxLength: 40,
        }),
        (texts) => {
          expect(readBack(texts.map(typstString))).toEqual(texts.map(expected));
        },
      ),
      { seed: 20261125, numRuns: 60 },
    );
  });

  it('comes back for lone surrogates', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 0xffff }), { maxLength: 30 }), (units) => {
        const text = String.fromCharCode(...units);
        expect(readBack([typstString(text)])).toEqual([expected(text)]);
      }),
      { seed: 20261125, numRuns: 60 },
    );
  });

  it('has no way out of a row of words either', () => {
    const source = typstWords([']#panic("out")[', { strong: '"); panic("out") //' }, { em: '\\' }]);
    const compiled = compiler.compile({ mainFileContent: source });
    expect(compiled.hasError()).toBe(false);
  });

  it('reads no file: there is none to be read', () => {
    const compiled = compiler.compile({ mainFileContent: '#read("/etc/passwd")' });
    expect(compiled.hasError()).toBe(true);
  });
});
