import { askedWords } from '../../engagement/askedByUse.ts';
import type { NameBook } from './nameBook.ts';

/** What a place in the document is called on the screens, to stand in the middle of a sentence. */
export function fieldName(path: readonly string[], names: NameBook): string {
  const [room = '', key = '', inner = ''] = path;
  if (room === 'parts') return `the ${names.part(key)}`;
  if (room === 'photos') {
    const field = photoFields[inner];
    const photo = `the photo ${names.photo(key)}`;
    return field === undefined ? photo : `${field} of ${photo}`;
  }
  if (room === 'observations') return 'an observation of your own';
  if (room === 'owners') return `${ownerFields[inner] ?? 'the entry'} of an owner`;
  if (room === 'comparables') return `${saleFields[inner] ?? 'the entry'} of a sale`;
  if (room === 'damages') return `${damageFields[inner] ?? 'the entry'} of a damage`;
  if (room === 'condition') return conditionFields[key] ?? 'the condition';
  if (room === 'worth') return worthFields[key] ?? 'the worth';
  if (room === 'engagement' && key === 'answers') return `the answer to “${askedWords(inner)}”`;
  if (room === 'features') return `the form of the ${key}`;
  if (room === 'opinion' && key === 'resolutions') {
    const [sign = '', part] = inner.split('@');
    return `how “${names.sign(sign)}”${part === undefined ? '' : ` on the ${names.part(part)}`} was resolved`;
  }
  return fields[path.join('.')] ?? fields[`${room}.${key}`] ?? fields[room] ?? `“${path.join(' › ')}”`;
}

const photoFields: Record<string, string> = {
  caption: 'the caption',
  alternative: 'the words for a reader who cannot see it',
  part: 'the part',
  asPlate: 'whether it is printed',
  marks: 'the marks',
};

const ownerFields: Record<string, string> = {
  name: 'the name',
  role: 'the part',
  bornIn: 'the year of birth or founding',
  diedIn: 'the year of death or closing',
  began: 'the years from which it was had',
  ended: 'the years until which it was had',
  how: 'the means of passing',
  place: 'the place',
  source: 'the source',
  evidence: 'the kind of source',
  sure: 'the sureness',
  direct: 'whether it came straight',
  labelled: 'the label',
  photos: 'the photos',
};

const saleFields: Record<string, string> = {
  name: 'the name',
  priceCents: 'the price',
  date: 'the date',
  where: 'the place',
  premiumIncluded: 'whether the premium is in the price',
  premiumPercent: 'the premium',
  adjustments: 'the adjustments',
  weight: 'the weight',
};

const damageFields: Record<string, string> = {
  part: 'the part',
  term: 'the kind',
  kind: 'what it is to',
  degree: 'the degree',
  where: 'the place',
  size: 'the size',
  goesOn: 'whether it goes on',
  origin: 'the cause',
  photos: 'the photos',
  words: 'the words',
};

const conditionFields: Record<string, string> = {
  completeness: 'whether it is complete',
  state: 'the state as a whole',
  words: 'the words on the condition',
  stability: 'whether it is safe to move and use',
  climate: 'the climate on the day',
  light: 'the light it was seen by',
};

const worthFields: Record<string, string> = {
  definition: 'the value that is meant',
  definitionFrom: 'where the definition of the value stands',
  market: 'the market',
  basis: 'whether prices are meant with the premium',
  approaches: 'an approach to the worth',
  byReading: 'the worth under a reading',
  assumptions: 'assumptions and conditions of the worth',
  lowCents: 'the lower end of the worth',
  highCents: 'the upper end of the worth',
  conclusion: 'how the worth follows',
};

const fields: Record<string, string> = {
  title: 'the name of the piece',
  mode: 'how the piece was seen',
  startingOdds: 'the starting odds',
  lookedOver: 'whether the whole was looked over and nothing later found',
  settled: 'that the case is settled',
  'settled.by': 'what settled the case',
  'settled.making': 'what it turned out to be',
  'settled.condition': 'the condition it turned out to be in',
  'settled.rests': 'the findings that the verdict itself rests on',
  'settled.on': 'the day the case was settled',
  'settled.words': 'the grounds on which the case was settled',
  claim: 'what it is said to be',
  'claim.period': 'the years it is said to be of',
  'claim.place': 'where it is said to come from',
  'claim.maker': 'who is said to have made it',
  plateOrder: 'the order of the plates',
  'engagement.client': 'the client',
  'engagement.clientAddress': 'the client’s address',
  'engagement.owner': 'the owner',
  'engagement.purpose': 'the intended use',
  'engagement.question': 'the question',
  'engagement.belief': 'what they believe it is',
  'engagement.mayRely': 'the intended users',
  'engagement.background': 'what is told of it',
  'engagement.askedOn': 'the day it was asked',
  'engagement.examinedOn': 'the day it was examined',
  'engagement.examinedAt': 'where it was examined',
  'engagement.effectiveOn': 'the effective date',
  'engagement.fee': 'the fee',
  'engagement.interest': 'the examiner’s own interest',
  'engagement.leave': 'what the owner allows',
  'engagement.limits': 'the limiting conditions of the job',
  'engagement.examiner': 'the examiner’s name',
  'engagement.examinerAddress': 'the examiner’s address',
  'engagement.examinerQualification': 'the examiner’s training and experience',
  'opinion.reading': 'the reading concluded on',
  'opinion.conclusion': 'the conclusion',
  'opinion.reasons': 'the reasons',
  'opinion.departure': 'why it departs from the findings',
  'opinion.years': 'the years concluded on',
  'opinion.place': 'the place concluded on',
  'opinion.limits': 'the limiting conditions of the opinion',
  'opinion.isNew': 'what is new in the revision',
  'opinion.why': 'why the revision is made',
  'opinion.status': 'whether the opinion is signed',
  'opinion.signedBy': 'who signed',
  'opinion.signedOn': 'the day of signing',
};
