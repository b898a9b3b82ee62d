import type { Hand } from '../../../exercise/index.ts';
import type { Bettered, Said } from '../types.ts';
import { capital, count } from './places.ts';

/** "every note right and"; where some notes were left unsure, "every note that could be told is right and". */
const rightAnd = (allSure: boolean, comma = ''): string =>
  `every note${allSure ? '' : ' that could be told is'} right${comma} and`;

/** How a better figure is said as a clause, and the unit that follows it. `inTime`: so small that it is not heard. */
const BETTERED: Readonly<
  Record<
    Bettered,
    { readonly unit: string; readonly say: (now: string, before: string, inTime: boolean) => string }
  >
> = {
  crossing: {
    unit: ' ms',
    say: (now, before, inTime) =>
      inTime
        ? `the crossing is in time now, where it was ${before} ms late`
        : `the crossing is better, ${now} ms late where it was ${before}`,
  },
  evenness: {
    unit: ' %',
    say: (now, before) => `it is more even than last time, ${now} % where it was ${before}`,
  },
  turn: {
    unit: ' ms',
    say: (now, before, inTime) =>
      inTime
        ? `the turn is in time now, where it was ${before} ms late`
        : `the turn is better, ${now} ms late where it was ${before}`,
  },
  change: {
    unit: ' times the others',
    say: (now, before) => `the change is better, ${now} times the others where it was ${before}`,
  },
  spread: {
    unit: ' ms',
    say: (now, before) => `the chords are closer, ${now} ms apart where they were ${before}`,
  },
  drift: {
    unit: ' %',
    say: (now, before) => `it is steadier, ${now} % from first to last where it was ${before}`,
  },
};

export const PROGRESS = {
  /** hands together stand; `atBpm` null: the tempo is not known */
  keyStands: (given: {
    readonly key: string;
    readonly nextKey: string;
    readonly atBpm: number | null;
    readonly inARow: number;
    readonly allSure: boolean;
  }): Said => {
    const { key, nextKey, atBpm, inARow, allSure } = given;
    return {
      sentence: `${key} stands${atBpm === null ? '' : ` at ${atBpm}`}: ${count(inARow)} in a row, ${rightAnd(allSure)} even`,
      emphasis: `${key} stands`,
      nextStep: `6 to 8 beats faster, or the next key round the circle, ${nextKey}.`,
    };
  },
  /** `togetherBpm` null: the other hand is not ready yet */
  handReady: (given: {
    readonly hand: Hand;
    readonly other: Hand;
    readonly inARow: number;
    readonly allSure: boolean;
    readonly togetherBpm: number | null;
  }): Said => {
    const { hand, other, inARow, allSure, togetherBpm } = given;
    return {
      sentence: `${capital(count(inARow))} in a row, ${rightAnd(allSure)} even: the ${hand} hand is ready`,
      emphasis: `the ${hand} hand is ready`,
      nextStep:
        togetherBpm === null
          ? `the ${other} hand alone, in the same way; then hands together.`
          : `hands together, at ${togetherBpm}; the ${other} hand is ready too.`,
    };
  },
  twice: (allSure: boolean): Said => ({
    sentence: `${capital(rightAnd(allSure, ','))} even, twice in a row. Once more like that`,
    emphasis: 'Once more like that',
    nextStep: 'the same again.',
  }),
  once: (allSure: boolean, inARow: number): Said => ({
    sentence: `${capital(rightAnd(allSure, ','))} even`,
    emphasis: '',
    nextStep: `the same again; ${count(inARow)} in a row make it ready.`,
  }),
  nearlyEven: (percent: number, boundPercent: number): Said => ({
    sentence: `Not yet quite even: the time from note to note varies by ${percent.toFixed(1)} %; at this tempo up to ${boundPercent.toFixed(1)} % counts as even`,
    emphasis: 'Not yet quite even',
    nextStep: 'the same tempo, with the pulse.',
  }),
  /** `unsure`: how many could not be told */
  nothingToRemark: (right: number, of: number, unsure: number, everyNote: boolean): Said => ({
    sentence: everyNote
      ? 'Every note right'
      : `${right} of ${of} notes right${unsure === 0 ? '' : `; ${count(unsure)} could not be told`}`,
    emphasis: '',
    nextStep: 'the same again.',
  }),
  better: (clause: string): Said => ({
    sentence: capital(clause),
    emphasis: capital(clause.split(', ')[0]!),
    nextStep: 'the same again, to make it stay.',
  }),
  bettered: BETTERED,
  everyNoteNow: (before: number): string =>
    `every note right now, where ${count(before)} ${before === 1 ? 'was' : 'were'} not last time`,
  /** after a sentence on the same trouble, figures with their units; `now` null: it has been said */
  betterThanLast: (now: string | null, before: string): string =>
    now === null
      ? `better than last time, when it was ${before}`
      : `better than last time, ${now} where it was ${before}`,
  praise: 'Every note right. ',
  everyNote: 'Every note',
  restIsEven: 'the rest is even',
  /** of two and more */
  moreThings: (things: number): string => `${count(things)} more things`,
};
