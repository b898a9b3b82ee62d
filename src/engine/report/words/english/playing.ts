import type { Hand, Hands } from '../../../exercise/index.ts';
import type { ApartReason, ChordPlace, FingeredName, FingerOf, Said, Task } from '../types.ts';
import { chord, finger, fingerOf, hands, stretch } from './places.ts';

const WAYS = { up: 'going up', down: 'coming down' } as const;

/** A late crossing, or several alike. */
export interface CrossingFacts {
  readonly kind: 'thumb-under' | 'over-thumb';
  readonly direction: 'up' | 'down';
  /** the note before the crossing and the one it leads to */
  readonly before: FingeredName;
  readonly here: FingeredName;
}

/** "the thumb comes late", "finger 4 crosses over late" */
const who = ({ kind, here }: CrossingFacts): string =>
  kind === 'thumb-under' ? 'the thumb comes late' : `${finger(here.finger)} crosses over late`;

const movement = ({ kind, before, here }: CrossingFacts): string =>
  kind === 'thumb-under'
    ? `Bring the thumb under while ${before.finger} still holds ${before.name}.`
    : `Bring ${here.finger} over while the thumb still holds ${before.name}.`;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const only = (task: Task): string =>
  `${hands(task.hands)}, only ${stretch(task.stretch)}, at ${task.tempoBpm}.`;

function apart(reason: ApartReason): string {
  switch (reason.kind) {
    case 'crossings':
      return 'the crossings come late both ways';
    case 'uneven':
      return `together the time varies by ${reason.together} %, each hand alone by ${reason.alone} % at most`;
    case 'delay':
      return `together the crossings come ${reason.together} ms late, in each hand alone ${reason.alone} ms at most`;
  }
}

/** Time, sound and touch. */
export const PLAYING = {
  apartForNow: (reason: ApartReason, tempoBpm: number): Said => ({
    sentence: `Hands apart for now: ${apart(reason)}`,
    emphasis: 'Hands apart for now',
    nextStep: `each hand alone until it is even; then together at ${tempoBpm}.`,
  }),
  crossingsBothWays: (lateMs: number, who: Hands, tempoBpm: number): Said => ({
    sentence: `The crossings come late both going up and coming down, by ${lateMs} ms`,
    half: 'the crossings come late both ways',
    emphasis: 'both going up and coming down',
    nextStep: `${hands(who)}, one direction at a time, at ${tempoBpm}; then up and down.`,
  }),
  /** `to`: the note where it is always the same one; `times`: how many were late, all of them */
  crossingsOneWay: (crossing: CrossingFacts, to: string | null, times: number, task: Task): Said => {
    const way = WAYS[crossing.direction];
    const what = `${way}${to === null ? '' : ` to ${to}`}, ${times === 2 ? 'both times' : 'each time'}`;
    return {
      sentence: `${capital(who(crossing))} ${what}`,
      half: `${who(crossing)} ${way}`,
      emphasis: what,
      nextStep: `${only(task)} ${movement(crossing)}`,
    };
  },
  crossingOne: (crossing: CrossingFacts, lateMs: number, task: Task): Said => {
    const what = `${WAYS[crossing.direction]} to ${crossing.here.name}`;
    return {
      sentence: `${capital(who(crossing))} ${what}, by ${lateMs} ms`,
      half: `${who(crossing)} ${what}`,
      emphasis: what,
      nextStep: `${only(task)} ${movement(crossing)}`,
    };
  },
  changeHesitates: (to: ChordPlace, ratio: number): Said => {
    const what = `to the ${chord(to)}`;
    return {
      sentence: `The change ${what} takes ${ratio.toFixed(1)} times as long as the others`,
      half: `the change ${what} hesitates`,
      emphasis: what,
      nextStep: 'hold the chord, look at the next shape, then move as one, with no sound between.',
    };
  },
  /** `lastFinger`: the one that is mostly last */
  chordsSpread: (spreadMs: number, lastFinger: FingerOf | null): Said => ({
    sentence: `The chords are not struck as one: ${spreadMs} ms from first note to last${
      lastFinger === null ? '' : `, ${fingerOf(lastFinger)} last`
    }`,
    half: 'the chords are not struck as one',
    emphasis: 'not struck as one',
    nextStep:
      lastFinger === null
        ? 'touch all the keys before you press, then let the arm fall into them at once.'
        : `touch all the keys before you press, and put the arm's weight into ${fingerOf(lastFinger)}.`,
  }),
  oneHandLeads: (first: Hand, other: Hand, byMs: number): Said => {
    const what = `the ${first} hand comes first, by ${byMs} ms`;
    return {
      sentence: `The hands are not together: ${what}`,
      half: what,
      emphasis: what,
      nextStep: `play it again, listening to the ${other} hand.`,
    };
  },
  handsApart: (tempoBpm: number): Said => ({
    sentence: 'The hands are not together, now one first, now the other',
    half: 'the hands are not together',
    emphasis: 'now one first, now the other',
    nextStep: `slower, at ${tempoBpm}: stop on each beat, both hands together, then go on.`,
  }),
  lateTurn: (lateMs: number, chords: boolean): Said => {
    const top = chords ? 'top chord' : 'top note';
    return {
      sentence: `The way down begins ${lateMs} ms late: the ${top} is held`,
      half: `the ${top} is held too long`,
      emphasis: `the ${top} is held`,
      nextStep: `think of the way down before you reach the top, and do not hold the ${top}.`,
    };
  },
  limping: (long: 'first' | 'second'): Said => {
    const [rhythm, other] = long === 'first' ? ['long–short', 'short–long'] : ['short–long', 'long–short'];
    return {
      sentence: `The notes limp in pairs, ${rhythm}`,
      emphasis: `in pairs, ${rhythm}`,
      nextStep: `the other way round first, ${other}, three times; then even.`,
    };
  },
  uneven: (percent: number, who: Hands, tempoBpm: number): Said => ({
    sentence: `The whole is uneven: the time from note to note varies by ${percent} %`,
    emphasis: 'The whole is uneven',
    nextStep: `${hands(who)}, slower, at ${tempoBpm}, with the pulse.`,
  }),
  drift: (slower: boolean, fromBpm: number, toBpm: number, tempoBpm: number): Said => {
    const what = `from ${fromBpm} to ${toBpm}`;
    const way = slower ? 'drags' : 'rushes';
    return {
      sentence: `It ${way}, ${what}`,
      half: `it ${way}, ${what}`,
      emphasis: what,
      nextStep: `with the pulse, 10 % slower, at ${tempoBpm}.`,
    };
  },
  underTempo: (playedBpm: number, aimBpm: number, nextBpm: number): Said => ({
    sentence: `Even, at ${playedBpm}; the aim is ${aimBpm}`,
    emphasis: `the aim is ${aimBpm}`,
    nextStep: `the same at ${nextBpm}.`,
  }),
};
