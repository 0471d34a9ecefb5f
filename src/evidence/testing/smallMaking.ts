import { type Making, making } from '../../knowledge/schema.ts';

/** How made-up furniture came to be; its figures mean nothing. */
export function smallMaking(): Making {
  const wear = {
    natural: [
      [0, 0.02],
      [150, 0.85],
    ] as [number, number][],
    imitated: [
      [0, 0.05],
      [200, 0.02],
    ] as [number, number][],
  };
  const faked = {
    natural: [
      [0, 0.1],
      [150, 0.7],
    ] as [number, number][],
    imitated: [
      [0, 0.6],
      [200, 0.3],
    ] as [number, number][],
  };
  return making.parse({
    startingOdds: {
      even: {
        name: 'Even',
        period: 50,
        'bench-copy': 22,
        'machine-copy': 20,
        'to-deceive': 8,
        why: 'Made up.',
      },
      sceptical: {
        name: 'Skeptical',
        period: 20,
        'bench-copy': 35,
        'machine-copy': 30,
        'to-deceive': 15,
        why: 'Made up.',
      },
    },
    defaultOdds: 'even',
    provincialLagYears: 20,
    whenMade: {
      'bench-copy': [
        [1860, 0],
        [1900, 1],
        [2020, 0.5],
      ],
      'machine-copy': [
        [1850, 0],
        [1920, 1],
      ],
      'to-deceive': [
        [1880, 0],
        [1930, 1],
      ],
    },
    thorough: { 'bench-copy': '40, 20–60', 'to-deceive': '60, 40–80' },
    spared: { period: '15, 10–25', later: '30, 20–40' },
    reused: {
      period: '0.5, 0.2–1',
      'bench-copy': '1, 0.5–2',
      'machine-copy': '0.3, 0.1–0.5',
      'to-deceive': '10, 5–20',
      ofOldStock: '40, 30–50',
    },
    imitation: {
      'bench-copy': '45, 30–60',
      'to-deceive': '70, 50–85',
      shown: '70, 50–85',
      hidden: '15, 5–30',
    },
    oldStock: { period: '1, 0.5–2', 'bench-copy': '4, 2–8', 'to-deceive': '30, 20–40' },
    tooling: Object.fromEntries(
      [
        'period',
        'bench-copy-thorough',
        'bench-copy-ordinary',
        'machine-copy',
        'to-deceive-thorough',
        'to-deceive-ordinary',
        'later',
      ].map((key, i) => [
        key,
        {
          hand: [
            [1800, 0.98 - i * 0.1],
            [1900, 0.5 - i * 0.05],
          ],
          earlyMachine: [
            [1800, 0.01],
            [1900, 0.3],
            [1960, 0.05],
          ],
        },
      ]),
    ),
    ageing: Object.fromEntries(
      [
        'period',
        'bench-copy',
        'machine-copy',
        'to-deceive-thorough',
        'to-deceive-ordinary',
        'scrubbed',
        'repair',
        'improve',
        'other-old',
      ].map((key) => [key, key.startsWith('to-') ? faked : wear]),
    ),
    use: Object.fromEntries(
      ['used', 'spared', 'to-deceive-thorough', 'to-deceive-ordinary', 'repair', 'improve', 'other-old'].map(
        (key) => [
          key,
          key === 'spared'
            ? {
                natural: [
                  [0, 0.01],
                  [200, 0.2],
                ],
                imitated: [
                  [0, 0.01],
                  [1, 0.01],
                ],
              }
            : key.startsWith('to-')
              ? faked
              : wear,
        ],
      ),
    ),
    sureness: {
      plain: { there: '99, 98–99.5', notThere: '1, 0.5–2' },
      fairly: { there: '88, 80–95', notThere: '12, 5–20' },
      hint: { there: '68, 60–75', notThere: '32, 25–40' },
    },
    scrubbed: '4, 2–8',
    campaigns: {
      'glued-anew': { name: 'Glued anew', since: 1880, inACentury: '60, 40–80' },
      'dressed-anew': { name: 'Dressed anew', inACentury: '8, 4–16' },
    },
    expected: {
      'hardly ever': '4, 1–10',
      seldom: '12, 5–22',
      sometimes: '30, 16–46',
      often: '60, 42–76',
      'nearly always': '90, 78–97',
    },
    lookedOver: {
      original: '92, 84–97',
      repaired: '35, 20–52',
      altered: '30, 20–52',
      married: '40, 20–52',
      copied: '85, 74–93',
      faked: '75, 58–88',
    },
    groupTogether: '70, 50–90',
    habitTogether: '90, 80–96',
    alikeTogether: '60, 40–80',
    outsideTheList: '2, 0.5–5',
    basis: { by: 'judgement', why: 'Made up for checking sums.' },
  });
}
