import type { FingeringRow } from './types.ts';

/**
 * Tonic arpeggios, two octaves up; 1 is the thumb.
 *
 * Sources, as read: B, E, V, L are four published teachers' tables. Alternatives (left hand 3 or 4, another first
 * finger) are common practice and cross at the same notes. The ear cannot see fingers: a delay is looked for where the
 * hand must cross by this table.
 */
export const ARPEGGIO_FINGERINGS: readonly FingeringRow[] = [
  { keys: ['C major', 'G major', 'F major'], right: '123 123 5', left: '542 142 1', source: 'B, E, L' },
  {
    keys: ['D major', 'A major', 'E major', 'B major'],
    right: '123 123 5',
    left: '532 132 1',
    source: 'B, L; left hand also 542',
  },
  { keys: ['F# major'], right: '123 123 5', left: '532 132 1', source: 'B, V' },
  {
    keys: ['Db major'],
    right: '412 412 4',
    left: '214 214 2',
    source: 'B, V, L; right hand also starts on 2',
  },
  {
    keys: ['Ab major', 'Eb major'],
    right: '412 412 4',
    left: '214 214 2',
    source: 'V, L; right hand also starts on 2',
  },
  {
    keys: ['Bb major'],
    right: '212 412 4',
    left: '321 321 3',
    source: 'E; left hand also 2 on top (memory)',
  },
  {
    keys: ['C minor', 'F minor', 'G minor'],
    right: '123 123 5',
    left: '542 142 1',
    source: 'E; left hand also 532',
  },
  {
    keys: ['D minor', 'E minor', 'A minor', 'B minor'],
    right: '123 123 5',
    left: '542 142 1',
    source: 'E, L',
  },
  {
    keys: ['F# minor', 'C# minor', 'G# minor'],
    right: '412 412 4',
    left: '214 214 2',
    source: 'V, L; right hand also starts on 2',
  },
  { keys: ['Eb minor'], right: '123 123 5', left: '542 142 1', source: 'V, E, L' },
  {
    keys: ['Bb minor'],
    right: '231 231 2',
    left: '321 321 3',
    source: 'L; left hand also 2 on top (memory)',
  },
];
