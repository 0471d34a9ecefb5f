import type { ShownText } from './shownTexts.ts';

/** Words that were given up for ones an examiner would use, and what is said now. */
export const retiredWords: readonly { was: RegExp; now: string; only?: RegExp }[] = [
  {
    was: /Redraw the figures|\bredraws\b/,
    now: 'Test the ranges, trials of the ranges',
    only: /^src\/(web|opinion|evidence)\//,
  },
  { was: /Weighed in short/, now: 'Quick result' },
  { was: /\b(Break off|Leave off|Draw nothing)\b/, now: 'Stop, Cancel' },
  { was: /\b[Tt]ake (this |the )?mark\b.* off/, now: 'Delete mark' },
  { was: /Take this photo out/, now: 'Remove from this piece' },
  { was: /^Take out$|^Take out:|^Take it out$/, now: 'Bring back, Remove' },
  { was: /\b[Pp]ut away\b/, now: 'Archive', only: /^src\/web\/pieces\// },
  { was: /[Mm]ake it mine/, now: 'Make a copy to edit' },
  { was: /All kept|^Keeping/, now: 'Saved, Saving…' },
  { was: /(record|Underside) does not answer/, now: 'Can’t reach Underside on this computer' },
  { was: /\b[Ww]hat jars\b|\bjarred\b/, now: 'What doesn’t fit' },
  { was: /\ba later one\b/, now: 'a later piece', only: /^src\// },
  { was: /\bnot firm\b/i, now: 'not settled' },
  { was: /[Aa]ll but excluded/, now: 'very improbable' },
  { was: /no leave for/, now: 'Not allowed on this visit' },
  { was: /[Bb]efore you lay a hand on it/, now: 'Handling cautions' },
  { was: /\b(It| –) tells of\b/, now: 'Evidence of' },
  { was: /[Oo]n whose word/, now: 'Basis', only: /^src\/(web|opinion)\// },
  {
    was: /\bof the making\b/,
    now: 'original',
    only: /^(src\/(web|opinion|drawing|evidence)|knowledge|examples)\//,
  },
  { was: /[Hh]onest (later )?repair/, now: 'later repair or renewal' },
  { was: /[Mm]ade to deceive/, now: 'made or altered to pass as older' },
  { was: /[Mm]ade up from/, now: 'married, or assembled from old parts' },
  { was: /Twins or brothers/, now: 'Compare two outlines' },
  { was: /Members side by side/, now: 'Compare a set' },
  { was: /\b[Ss]loped (back|off)\b|^Sloped$/, now: 'Chamfered' },
  { was: /Dating by hand/, now: 'Date from dated features' },
  { was: /Panels and bottoms/, now: 'Panel shrinkage' },
  { was: /Set as PDF/, now: 'Make PDF' },
  { was: /^Keys$/, now: 'Keyboard shortcuts' },
  { was: /not to be told/, now: 'could not tell' },
  { was: /^Call it$/, now: 'Name' },
  { was: /^Nearness$/, now: 'Zoom' },
  { was: /^What for$/, now: 'Intended use' },
  { was: /[Ww]ho may rely on/, now: 'Intended users' },
  { was: /Opinion as of|[Ee]ffective day\b/, now: 'Effective date' },
  { was: /^Limits$/, now: 'Limiting conditions' },
];

/** British spellings, as the beginnings or endings of words; American ones stand in every text of the house. */
export const britishSpellings: readonly RegExp[] = [
  /\w*(colour|neighbour|parlour|labour|favour|honour|odour|vapour|behaviour|harbour|flavour|vigour|rigour)\w*/i,
  /\b(grey|centre|centred|centring|moulder|mould|fibre|litre|theatre|lustre|sombre|sabre|mitre|calibre)\w*/i,
  /\b((milli|centi|kilo)?metres?)\b/i,
  /\b\w*(judgement|sceptic|carcase|sulphur|sulphate|plough|draughtsm|manoeuvr|aluminium|jewellery)\w*/i,
  /\b\w*(panell|bevell|labell|levell|modell|chisell|channell|enamell|dowell|pencill|stencill|travell|unravell)(ed|ing|er)\b/i,
  /\b(re|de)?(oxid|normal|recogn|real|organ|galvan|ebon|mechan|crystall|polar|carbon|standard|special|summar|emphas|apolog|minim|maxim|parametr)is(e|ed|es|ing|er|ation)\b/i,
  /\b(analys|catalys)(e|ed|ing)\b/i,
  /\b(ageing|learnt|whilst|amongst|towards|afterwards|licence|practis(e|ed|ing)|skilful|tyres?|anticlockwise|artefacts?|storeys?|programmes?)\b/i,
];

/** What must not stand in a text shown to a person: retired words with those that are said now, and British spellings. */
export function shownFaults(texts: readonly ShownText[]): string[] {
  return texts.flatMap(({ path, line, text }) => [
    ...retiredWords.flatMap(({ was, now, only = /./ }) => {
      const found = only.test(path) ? was.exec(text.trim())?.[0] : undefined;
      return found === undefined ? [] : [`${path}:${line} says “${found}”: say “${now}”`];
    }),
    ...britishSpellings.flatMap((spelling) => {
      const found = spelling.exec(withoutIds(text))?.[0];
      return found === undefined || isKeyOfFiles(path, found)
        ? []
        : [`${path}:${line} spells “${found}” the British way`];
    }),
  ]);
}

/** Sentences of the knowledge checks quote what must be written in the files: keys that keep their spelling. */
function isKeyOfFiles(path: string, word: string): boolean {
  return /^src\/knowledge\/(checks\/|plainFigure)/.test(path) && /^(judgement|ageing)$/.test(word);
}

/** A text without the ids named in it, such as `photo.colour-balance` or `colourSpace`: those never change. */
function withoutIds(text: string): string {
  return text.replaceAll(
    /\b\w+\.[a-z]\w*(-\w+)*|\b[a-z]+[A-Z]\w*|\b(base|waist|frame)-moulding\b|\b\w+(-\w+){2,}/g,
    '',
  );
}
