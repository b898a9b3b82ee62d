import { PRACTICE } from './types.ts';
import type { Rule } from './types.ts';

/** What is said where nothing is wrong, and what is asked. */
export const ABOUT_PROGRESS = {
  'not-sure': {
    kind: 'asked',
    rank: 8,
    when: 'it cannot be told whether a note was struck',
    why: 'an accusation is made only where it is sure; else it is asked',
    source: PRACTICE,
  },
  practised: {
    kind: 'practice',
    rank: 1,
    when: 'something was to be practised. Done: as often in a row as meant, every note right, in its rhythm and in time. Nearly: once fewer, something late or uneven in it, or faster than asked. Else not yet',
    why: 'what was asked is what is judged, and nothing is blamed that was meant; the next step leads back to the whole',
    source: PRACTICE,
  },
  'key-ready': {
    kind: 'progress',
    rank: 7,
    when: 'both hands at the criterion so often in a row',
    why: 'the criterion is set before, and is a teacher’s to change',
    source: PRACTICE,
  },
  'hand-ready': {
    kind: 'progress',
    rank: 7,
    when: 'one hand at the criterion so often in a row',
    why: 'hands together only when each alone is ready; the hand is named only where it was chosen',
    source: PRACTICE,
  },
  'often-enough': {
    kind: 'progress',
    rank: 7,
    when: 'at the criterion so often in a row, but all on one day; or hands together, and a hand alone was never ready',
    why: 'what goes well on another day too is learnt; hands apart come before hands together',
    source: PRACTICE,
  },
  better: {
    kind: 'progress',
    rank: 7,
    when: 'the trouble named last time is less by more than both errors and by a quarter',
    why: 'both figures, so that it can be believed',
    source: PRACTICE,
  },
  'twice-at-the-criterion': {
    kind: 'progress',
    rank: 7,
    when: 'twice at the criterion',
    why: 'once more makes it sure',
    source: PRACTICE,
  },
  'under-tempo': {
    kind: 'progress',
    rank: 7,
    when: 'even, and slower than the tempo aimed at',
    why: 'a step of 6 % is about two of a metronome’s',
    source: PRACTICE,
  },
  'at-the-criterion': {
    kind: 'progress',
    rank: 7,
    when: 'at the criterion, the first time on end',
    why: 'praise of what was measured, and of no more',
    source: PRACTICE,
  },
  'nearly-even': {
    kind: 'progress',
    rank: 7,
    when: 'surely over the bound that makes it ready, the ending left out, under the one that makes it uneven',
    why: 'the figure and the bound, without blame',
    source: PRACTICE,
  },
  'nothing-to-remark': {
    kind: 'progress',
    rank: 7,
    when: 'nothing else holds',
    why: 'how many notes were right, and how many could not be told',
    source: PRACTICE,
  },
} as const satisfies Record<string, Rule>;
