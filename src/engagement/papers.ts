/** The papers that can be made of a piece, all from one document model. */
export const paperKinds = [
  'full',
  'letter',
  'restricted',
  'condition',
  'client',
  'object-id',
  'lesson',
] as const;
export type PaperKind = (typeof paperKinds)[number];

/** What a paper is called, what stands above its title, and what it is for. */
export const paperWords: Record<PaperKind, { name: string; above: string; says: string }> = {
  full: {
    name: 'Full report',
    above: 'Opinion on a piece of furniture',
    says: 'What is read in five or six pages, then appendices with every finding, weight and source.',
  },
  letter: {
    name: 'Letter of one page',
    above: 'Letter of opinion',
    says: 'The conclusion, how sure it is, your reasons and limits. It stays on one page while your own words are short.',
  },
  restricted: {
    name: 'Restricted report',
    above: 'Restricted report',
    says: 'The conclusion and what the use asks for, without the findings; for users named in it only.',
  },
  condition: {
    name: 'Condition report',
    above: 'Condition report',
    says: 'Damage by damage, numbered on the drawing and in the photos; no opinion on age and no treatment.',
  },
  client: {
    name: 'For the client, in plain words',
    above: 'For the owner, in plain words',
    says: 'What it is, how sure that is, why, and how to treat it; goes with the opinion and does not take its place.',
  },
  'object-id': {
    name: 'Object ID checklist',
    above: 'Object ID checklist',
    says: 'What identifies the piece if it is ever stolen or lost, category by category, with what is not recorded.',
  },
  lesson: {
    name: 'Teaching handout',
    above: 'A case for teaching',
    says: 'The question, the plates, what to look at, and the answer apart. Names and places entered for the job are taken out: read it before you hand it out.',
  },
};

/** How a paper is handed out. */
export const paperForms = ['pdf', 'docx', 'html'] as const;
export type PaperForm = (typeof paperForms)[number];

export const paperFormWords: Record<PaperForm, string> = {
  pdf: 'PDF, to print and send',
  docx: 'DOCX, for those who must edit',
  html: 'Web page, one file',
};
