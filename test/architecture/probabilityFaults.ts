import type { ShownText } from './shownTexts.ts';

/** The one place where words for a probability stand. */
const home = 'src/weighing/probabilityWords.ts';

/** Words of the scale, words beside it, and counts of another kind than the scale's `in 100` and `in 1000`. */
const worded: readonly RegExp[] = [
  /\b(almost|nearly|virtually) certain/i,
  /\bimprobab(le|ly)\b/i,
  /\b(very|most|quite|highly|hardly) probab(le|ly)\b|\bas probab(le|ly) as not\b/i,
  /(^|[^w] )\bprobably\b/i,
  /\b(more|less) probab(le|ly) than not\b/i,
  /\bpossibly\b|\b(is|are|seems?) possible\b/i,
  /\b(un)?likel(y|ier|iest)\b(?! ratio)/i,
  /\b(even|good|fair|fifty-fifty|small|slim|high|low) chances?\b|\bchances? (in|are|that)\b/i,
  /\b(presumably|undoubtedly|doubtless|no doubt|beyond doubt|in all likelihood|odds-on|confident(ly)?)\b/i,
  /\b(times|one|nine|seven|\d+) (in|out of) ten\b|\b\d+ (in|out of) 10\b/i,
  /\b(seven|eight|nine) tenths\b|\b(one|nineteen) twentieths?\b|\b(three|one) quarters? of the probability\b/i,
  /\bhalf of the probability\b/i,
  /\d ?(%|per ?cent) (sure|certain|probab|confiden|of the (time|probability))/i,
];

/** A probability told in words or counts of its own: all are worded by `src/weighing/probabilityWords.ts`. */
export function probabilityFaults(texts: readonly ShownText[]): string[] {
  return texts.flatMap(({ path, line, text }) => {
    if (path === home || !path.startsWith('src/')) return [];
    const found = worded.flatMap((pattern) => pattern.exec(text)?.[0].trim() ?? [])[0];
    return found === undefined
      ? []
      : [`${path}:${line} words a probability itself, “${found}”: take the words from ${home}`];
  });
}

/**
 * A doubt told that does not go through `told`, and so may cover something else than the house says: every `give or take` and `±`
 * that is followed by a figure.
 */
export function doubtFaults(path: string, source: string): string[] {
  return [...source.matchAll(/(give or take|±) ?(\$?\{)(.{0,60})/gs)].flatMap(({ 3: figure = '', index }) =>
    /\btold\(|^doubtMm\b/.test(figure)
      ? []
      : [
          `${path}:${source.slice(0, index).split('\n').length} tells a doubt without told() of src/units/doubt.ts`,
        ],
  );
}
