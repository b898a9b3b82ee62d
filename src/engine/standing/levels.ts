import { hasOctaves } from '../exercise/index.ts';
import { SET, SYLLABUS_FORMAT, type Ask, type SetForm, type Syllabus } from './syllabus.ts';

/*
 * What is begun when, and how fast it is to be before it counts as ready. Common practice, no source: a teacher changes it on the
 * page. Beats a minute; arpeggio and scale have two notes a beat, broken triads three, chords one.
 */

type Tempi = Readonly<Record<SetForm, number>>;

const FIRST: Tempi = { arpeggio: 50, scale: 60, triads: 50, 'broken-triads': 40, progression: 40 };
const LONGER: Tempi = { arpeggio: 56, scale: 66, triads: 56, 'broken-triads': 44, progression: 46 };
const FASTER: Tempi = { arpeggio: 66, scale: 80, triads: 66, 'broken-triads': 52, progression: 54 };
const FASTEST: Tempi = { arpeggio: 80, scale: 104, triads: 76, 'broken-triads': 63, progression: 63 };

/** From here on lines are to be joined, and as loud as each other: a step of dynamics is some 5 dB, so that this is well under one. */
const BEARING = { touch: 'legato', loudnessDb: 3 } as const;

function setOf(
  tempi: Tempi,
  octaves: number,
  bearing: Pick<Ask, 'touch' | 'loudnessDb'> = {},
): readonly Ask[] {
  return SET.map((form) => ({
    form,
    octaves: hasOctaves(form) ? octaves : 1,
    leastBpm: tempi[form],
    ...(hasOctaves(form) && bearing),
    together: true,
  }));
}

const keys = (majors: string, minors: string): readonly string[] => [
  ...majors.split(' ').map((tonic) => `${tonic} major`),
  ...minors.split(' ').map((tonic) => `${tonic} minor`),
];
const ALL = keys('C G D A E B F# Db Ab Eb Bb F', 'A E B F# C# G# Eb Bb F C G D');

/** The levels that hold where nobody has set others. */
export const USUAL_SYLLABUS: Syllabus = {
  format: SYLLABUS_FORMAT,
  version: 1,
  levels: [
    { name: '1', keys: keys('C G F', 'A'), asks: setOf(FIRST, 1) },
    { name: '2', keys: keys('D A Bb', 'E D'), asks: setOf(FIRST, 1) },
    { name: '3', keys: keys('E Eb Ab', 'B G C'), asks: setOf(LONGER, 2, BEARING) },
    { name: '4', keys: keys('B Db F#', 'F# F Bb'), asks: setOf(LONGER, 2, BEARING) },
    { name: '5', keys: ['C# minor', 'G# minor', 'Eb minor'], asks: setOf(LONGER, 2, BEARING) },
    { name: '6', keys: ALL, asks: setOf(FASTER, 2, BEARING) },
    { name: '7', keys: ALL, asks: setOf(FASTEST, 4, BEARING) },
  ],
};
