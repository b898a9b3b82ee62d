import type { Scenario } from './scenarios.ts';

/** Players who are judged by their last four attempts, one after the other in one sitting. */
export const SERIES: readonly Scenario[] = [
  {
    name: 'tired: four attempts, each clearly less even',
    forms: ['scale', 'arpeggio'],
    hands: ['left', 'right'],
    weight: 0,
    series: 4,
    gravest: 'tired',
    also: ['evenness'],
    // So far apart that few notes do not turn the order round by chance: as played 58 of 60 fall each time (of 0.02 to 0.14 some 80 %).
    playing: (_, ioiMs, attempt) => ({ student: { jitterMs: ioiMs * [0.012, 0.03, 0.07, 0.15][attempt]! } }),
  },
  {
    name: 'four even attempts, each a little less so',
    forms: ['scale', 'arpeggio'],
    hands: ['left', 'right'],
    weight: 0,
    series: 4,
    gravest: null,
    also: [],
    playing: (_, ioiMs, attempt) => ({
      student: { jitterMs: Math.hypot(10, 0.04 * ioiMs) * [0.15, 0.2, 0.25, 0.3][attempt]! },
    }),
  },
  {
    name: 'faster each time, the scatter the same',
    forms: ['scale', 'arpeggio'],
    hands: ['left', 'right'],
    speed: [2, 4],
    weight: 0,
    series: 4,
    gravest: null,
    also: [],
    playing: (_, __, attempt) => ({ faster: 1 + 0.12 * attempt, student: { jitterMs: 5 } }),
  },
];
