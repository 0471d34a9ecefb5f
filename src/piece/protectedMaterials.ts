/** How far the rule was read that a reminder repeats. */
type Read = 'read' | 'read in part' | 'from another’s account' | 'from memory';
/** A rule of law that bears on a material: a reminder, where to check it, and how far it was read. */
export type MaterialReminder = { says: string; check: string; read: Read };
export type ProtectedMaterial = {
  id: string;
  name: string;
  /** What it may be called where somebody writes of it. */
  named: RegExp;
  reminders: readonly MaterialReminder[];
};

const wildlife = 'the Fish and Wildlife Service, and the CITES authority of each country it would pass';

/**
 * Materials of furniture whose trade the law holds in, with the names they are written by.
 *
 * Of mahogany (*Swietenia*) it was read that its listing takes in logs, sawn wood and veneer and not finished furniture, in a text of 2004: it is left
 * out, since nearly every piece would be reminded of it.
 */
export const protectedMaterials: readonly ProtectedMaterial[] = [
  {
    id: 'ivory',
    name: 'Ivory',
    named: /(?<!vegetable |imitation |faux )\bivor(?:y|ies)\b(?![- ](?:nut|white|paint|colou?r))/iu,
    reminders: [
      {
        says: 'United States: nearly all trade in African elephant ivory has been barred since July 6, 2016. An antique passes only where it meets every condition of the rule on antiques; a larger piece with less than 200 grams of ivory fixed in it may pass under further conditions. For Asian elephant there is only the rule on antiques. Some states forbid more.',
        check: `50 CFR 17.40(e); 16 USC 1539(h); Director’s Order 210; ${wildlife}; the state’s wildlife agency`,
        read: 'read in part',
      },
      {
        says: 'United Kingdom: dealing in elephant ivory is barred unless the piece is registered or certified as exempt. A piece made before March 3, 1947 may be registered where ivory is less than 10 percent of its volume and a part of it; one made before 1918 may be certified where it is of outstanding artistic, cultural or historical value. Keeping it is not dealing. Whether ivory of other animals has been added since was not read.',
        check: 'Ivory Act 2018, sections 2 and 7, and the guidance of the Animal and Plant Health Agency',
        read: 'read in part',
      },
      {
        says: 'Bone, vegetable ivory and celluloid are taken for ivory. What it is, is a question for a laboratory, and no species is certified here.',
        check: 'a conservator or a laboratory',
        read: 'read',
      },
    ],
  },
  {
    id: 'tortoiseshell',
    name: 'Tortoiseshell',
    named: /(?<!imitation |faux )\b(?:tortoise-?\s?shell|turtle-?\s?shell|hawksbill)\b/iu,
    reminders: [
      {
        says: 'All sea turtles stand in Appendix I of CITES and under the Endangered Species Act: in the United States a sale, and anywhere a border, may need papers or be forbidden. Painted horn and celluloid are taken for it.',
        check: `16 USC 1539(h); Director’s Order 210; ${wildlife}`,
        read: 'from another’s account',
      },
    ],
  },
  {
    id: 'whalebone',
    name: 'Whalebone, walrus and narwhal',
    named: /\b(?:whalebone|whale(?:’|')?s? (?:bone|ivory|tooth|teeth)|baleen|scrimshaw|walrus|narwhal)\b/iu,
    reminders: [
      {
        says: 'United States: the Marine Mammal Protection Act bars trade in parts of whales, walrus and narwhal, with exceptions for things from before 1972 and for handicraft of Native people; the Endangered Species Act may bear on it besides.',
        check: `the Marine Mammal Protection Act; ${wildlife}`,
        read: 'read in part',
      },
    ],
  },
  {
    id: 'brazilian-rosewood',
    name: 'Brazilian rosewood',
    named: /\b(?:brazil(?:ian)? rosewood|rio rosewood|dalbergia nigra|jacarand[aá])/iu,
    reminders: [
      {
        says: 'Dalbergia nigra has stood in Appendix I of CITES since June 11, 1992. Wood acquired before needs a certificate that says so before it crosses a border; the European Union holds it in its strictest annex.',
        check: `the CITES listing; ${wildlife}`,
        read: 'read',
      },
    ],
  },
  {
    id: 'rosewood',
    name: 'Rosewood and its kin',
    named:
      /(?<!brazil |brazilian |rio )\b(?:rosewood|kingwood|tulipwood|cocobolo|palisander|african blackwood|huanghuali|dalbergia(?! nigra))\b/iu,
    reminders: [
      {
        says: 'Which rosewood it is decides: Brazilian rosewood stands in Appendix I of CITES. The other kinds of Dalbergia, among them kingwood, tulipwood and cocobolo, have stood in Appendix II since 2017, with an exception for finished goods of up to 10 kilograms of such wood in a shipment.',
        check: `the CITES listing with its annotation; ${wildlife}`,
        read: 'from memory',
      },
    ],
  },
];

/** The protected materials that any of these words name, in the order of the list. */
export function materialsNamed(words: readonly string[]): readonly ProtectedMaterial[] {
  return protectedMaterials.filter(({ named }) => words.some((each) => named.test(each)));
}

/** The reminders of a material as sentences for the examiner: what the rule says, how far it was read, what to check it against. */
export function materialSentences({ name, reminders }: ProtectedMaterial): string[] {
  return reminders.map((each) => sentence(name, each));
}

/** Those of them that may stand in a document: only what was read in its text. */
export function printedMaterialSentences({ name, reminders }: ProtectedMaterial): string[] {
  return reminders.filter(({ read }) => read === 'read').map((each) => sentence(name, each));
}

function sentence(name: string, { says, check, read }: MaterialReminder): string {
  const marked = read === 'read' ? '' : ` (${read[0]?.toUpperCase()}${read.slice(1)}.)`;
  return `${name}. ${says}${marked} Check: ${check}.`;
}
