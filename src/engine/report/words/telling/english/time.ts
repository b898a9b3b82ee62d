import type { ABOUT_TIME } from '../../rules/time.ts';
import type { Clauses, Parts } from '../types.ts';
import type { Saying } from '../../said/index.ts';
import { joined, plain, twoAlike } from '../types.ts';
import { chord, count, nth, WAYS } from './places.ts';
import type { Notes } from './places.ts';
import { RHYTHMS } from './practice.ts';

const LOUDER = {
  louder: 'you grow louder from beginning to end',
  softer: 'you grow softer from beginning to end',
  'to-the-turn': 'you grow louder to the turn and softer again after it',
  'from-the-turn': 'you grow softer to the turn and louder again after it',
} as const;
const VOICES = { lowest: 'the lowest note', inner: 'a middle note', highest: 'the highest note' } as const;

function apart(reason: Saying<'hands-apart-for-now'>['reason']): string {
  switch (reason.kind) {
    case 'crossings':
      return 'the crossings come late both ways';
    case 'uneven':
      return `together the time varies by ${reason.together} %, each hand alone by ${reason.alone} % at most`;
    case 'delay':
      return `together the crossings come ${reason.together} ms late, in each hand alone ${reason.alone} ms at most`;
  }
}

/** Time, hands and chords; and what was meant. */
export function aboutTime({ crossing, name, spot }: Notes): Pick<Clauses, keyof typeof ABOUT_TIME> {
  return {
    'hands-apart-for-now': ({ reason }) => ({
      sentence: `hands apart for now: ${apart(reason)}`,
      half: apart(reason),
      emphasis: 'hands apart for now',
    }),
    'crossing-late-both-ways': ({ lateMs }) => ({
      sentence: `the crossings come late both going up and coming down, by ${lateMs} ms`,
      half: 'the crossings come late both ways',
      emphasis: 'both going up and coming down',
    }),
    'crossing-late-one-direction': ({ crossing: at, sameNote, times, lateMs }) => {
      const what = joined(
        WAYS[at.direction],
        sameNote ? `to ${name(at.to)}` : '',
        at.hand === null ? '' : `(${at.hand} hand)`,
      );
      return {
        sentence: `the crossing comes late ${what}, ${times === 2 ? 'both times' : 'each time'}, by ${lateMs} ms`,
        half: `the crossing comes late ${what}`,
        emphasis: what,
      };
    },
    'crossing-late': ({ crossings }) => {
      const [worst] = crossings;
      const what = crossing(worst!.crossing);
      const both = twoAlike(crossings, (one) => crossing(one.crossing), 'and');
      if (both !== null)
        return {
          sentence: `the crossing comes late ${both.what}${both.twice ? ', twice' : ''}, by ${both.ms} ms`,
          half: `the crossing comes late ${both.what}${both.twice ? ', twice' : ''}`,
          emphasis: both.what,
        };
      return {
        sentence:
          crossings.length === 1
            ? `the crossing comes late ${what}, by ${worst!.lateMs} ms`
            : `${count(crossings.length)} crossings come late, most ${what}, by ${worst!.lateMs} ms`,
        half:
          crossings.length === 1
            ? `the crossing comes late ${what}`
            : `${count(crossings.length)} crossings come late`,
        emphasis: what,
      };
    },
    'late-note': ({ notes }) => {
      const [worst] = notes;
      const what = spot(worst!.at);
      const both = twoAlike(notes, (one) => spot(one.at), 'and');
      if (both !== null)
        return {
          sentence: `${both.what} ${both.twice ? 'comes late twice' : 'come late'}, by ${both.ms} ms`,
          half: `${both.what} ${both.twice ? 'comes late twice' : 'come late'}`,
          emphasis: both.what,
        };
      return notes.length === 1
        ? {
            sentence: `${what} comes late, by ${worst!.lateMs} ms`,
            half: `${what} comes late`,
            emphasis: what,
          }
        : {
            sentence: `two notes come late, most ${what}, by ${worst!.lateMs} ms`,
            half: 'two notes come late',
            emphasis: what,
          };
    },
    'change-hesitates': ({ to, ratio }) => {
      const what = `to the ${chord(to)}`;
      return {
        sentence: `the change ${what} takes ${ratio.toFixed(1)} times as long as the others`,
        half: `the change ${what} hesitates`,
        emphasis: what,
      };
    },
    'late-at-the-turn': ({ lateMs, chords }) => {
      const top = chords ? 'top chord' : 'top note';
      return {
        sentence: `the way down begins ${lateMs} ms late: the ${top} is held`,
        half: `the ${top} is held too long`,
        emphasis: `the ${top} is held`,
      };
    },
    tired: ({ attempts, fromPercent, toPercent }) => ({
      sentence: `tired? Each of the last ${count(attempts)} attempts was less even than the one before, from ${fromPercent.toFixed(0)} to ${toPercent.toFixed(0)} %`,
      half: 'the last attempts grew less even',
      emphasis: 'less even than the one before',
    }),
    'uneven-in-pairs': ({ rhythm }) =>
      plain(`the notes limp in pairs, ${RHYTHMS[rhythm]}`, `in pairs, ${RHYTHMS[rhythm]}`),
    uneven: ({ percent, boundPercent }) => ({
      sentence: `the time from note to note varies by ${percent.toFixed(0)} %; up to ${boundPercent.toFixed(1)} % is even at this tempo`,
      half: 'the notes are uneven',
      emphasis: `varies by ${percent.toFixed(0)} %`,
    }),
    drift: ({ fromBpm, toBpm }) => {
      const what = `from ♩ = ${fromBpm} to ${toBpm}`;
      return plain(`you get ${toBpm < fromBpm ? 'slower' : 'faster'}, ${what}`, what);
    },
    'one-hand-leads': ({ first, byMs }) => {
      const what = `the ${first} hand comes first, by ${byMs} ms`;
      return { sentence: `the hands are not together: ${what}`, half: what, emphasis: what };
    },
    'hands-apart': () => ({
      sentence: 'the hands are not together, now one first, now the other',
      half: 'the hands are not together',
      emphasis: 'now one first, now the other',
    }),
    'chords-spread': ({ spreadMs, last, hand }) => {
      const whose = hand === null ? '' : ` of the ${hand} hand`;
      return {
        sentence: `the chords${whose} are not struck as one: ${spreadMs} ms from first note to last${
          last === null ? '' : `, ${VOICES[last]} last`
        }`,
        half: `the chords${whose} are not struck as one`,
        emphasis: 'not struck as one',
      };
    },
    'inner-notes-soft': ({ softerDb }) =>
      softerDb === null
        ? plain('the inner notes of the chords hardly sound, or not at all', 'the inner notes')
        : {
            sentence: `the inner notes are much softer than the outer ones, by ${softerDb.toFixed(0)} dB`,
            half: 'the inner notes are much softer than the outer ones',
            emphasis: 'the inner notes',
          },
    'slows-to-the-end': ({ fromBpm, toBpm }) =>
      plain(`you slow down into the end, from ♩ = ${fromBpm} to ${toBpm}`, 'slow down into the end'),
    'broad-last-note': ({ lateMs }) =>
      plain(`the last note comes broadly, ${lateMs} ms later than even`, 'the last note comes broadly'),
    'in-a-rhythm': ({ rhythm }) => {
      const half = `played ${RHYTHMS[rhythm]}`;
      return { sentence: `${half}: meant so?`, half, emphasis: RHYTHMS[rhythm] };
    },
    'tempo-sways': ({ slowBpm, fastBpm }) =>
      plain(
        `the tempo sways between ♩ = ${slowBpm} and ${fastBpm}, smoothly`,
        `between ♩ = ${slowBpm} and ${fastBpm}`,
      ),
    'loudness-shaped': ({ way, byDb }) => {
      const half = LOUDER[way];
      return plain(`${half}, by about ${byDb.toFixed(0)} dB`, half);
    },
    'accented-in-groups': ({ every, byDb }) => {
      const half = `every ${nth(every)} note is accented`;
      return plain(`${half}, by about ${byDb.toFixed(0)} dB`, half);
    },
    'pedal-held': () => ({
      sentence: 'the pedal stays down, so nothing is said of connected or detached',
      half: 'the pedal stays down',
      emphasis: 'the pedal stays down',
    }),
  };
}

export function partsAboutTime({ crossing, spot }: Notes): Parts {
  return {
    'crossing-late': ({ crossings }) =>
      crossings.map((one) => ({
        steps: [one.step],
        text: `the crossing comes ${one.lateMs} ms late ${crossing(one.crossing)}`,
      })),
    'late-note': ({ notes }) =>
      notes.map((one) => ({ steps: [one.step], text: `${spot(one.at)} comes ${one.lateMs} ms late` })),
  };
}
