import { capital } from '../../../../base/text.ts';
import { keyName, theForm } from '../../../../exercise/index.ts';
import type { NoteNaming } from '../../../../exercise/index.ts';
import type { Difference, FaultFacts } from '../../said/index.ts';
import type { ABOUT_NOTES } from '../../rules/notes.ts';
import type { Clauses, Parts } from '../types.ts';
import { joined } from '../types.ts';
import { count, list, often, where } from './places.ts';
import type { Notes } from './places.ts';

const be = (number: number): string => (number === 1 ? 'is' : 'are');
const notes = (number: number): string => `${count(number)} note${number === 1 ? '' : 's'}`;

/** Sound, notes and the course of the attempt. */
export function aboutNotes(say: Notes, naming: NoteNaming): Pick<Clauses, keyof typeof ABOUT_NOTES> {
  const { name, fault, placed, spot, beside } = say;
  const key = (one: string): string => keyName(one, { language: 'en', naming });

  function differ(one: Difference): { readonly like: string; readonly not: string } {
    switch (one.kind) {
      case 'form':
        return {
          like: `${theForm(one.like, 'en')}${one.ofKey === null ? '' : ` of ${key(one.ofKey)}`}`,
          not: theForm(one.not, 'en'),
        };
      case 'key':
        return { like: key(one.like), not: key(one.not) };
      case 'both-hands':
        return {
          like: 'both hands',
          not: one.notHand === null ? 'one hand alone' : `the ${one.notHand} hand alone`,
        };
      case 'one-hand':
        return { like: 'one hand alone', not: 'both together' };
      case 'octaves':
        return { like: `${count(one.like)} octave${one.like === 1 ? '' : 's'}`, not: count(one.not) };
      case 'minor-scale':
        return { like: `the ${one.like} minor scale`, not: `the ${one.not} one` };
    }
  }

  /** "two wrong", "one missing", "two not right" and which */
  function faults(ones: readonly FaultFacts[]): {
    readonly sentence: string;
    readonly half: string;
    readonly emphasis: string;
  } {
    const missing = ones.filter(({ struck }) => struck === null).length;
    const kind = missing === 0 ? 'wrong' : missing === ones.length ? 'missing' : 'not right';
    const short = (one: FaultFacts): string =>
      kind === 'missing' ? joined(name(one.wanted), say.faultPlace(one)) : placed(one);
    const what = ones.length <= 2 ? list(ones.map(short)) : short(ones[0]!);
    const half =
      ones.length <= 2 ? list(ones.map(placed)) : `${notes(ones.length)} ${be(ones.length)} ${kind}`;
    return {
      sentence: `${count(ones.length)} ${kind}${ones.length <= 2 ? ': ' : ', the first '}${what}`,
      half,
      emphasis: what,
    };
  }

  return {
    'too-little': ({ right, of, heardMuch }) => {
      const what = `${right} of ${of} notes`;
      const sentence = heardMuch
        ? `This does not sound like the exercise chosen: only ${what} fit`
        : `Too little was heard to judge: ${what}`;
      return { sentence, half: sentence, emphasis: what };
    },
    'sound-lost': ({ lostSec }) => ({
      sentence: `${lostSec.toFixed(1)} s of sound were lost: time and missing notes are not judged`,
      half: 'part of the sound was lost',
      emphasis: 'were lost',
    }),
    'other-exercise': ({ difference, note, measured }) => {
      const { like, not } = differ(difference);
      if (measured) {
        const sentence = `You played ${like}, not ${not}; that is what is measured here`;
        return { sentence, half: sentence, emphasis: like };
      }
      const times = { once: '', both: ' both times', each: ' each time' };
      const because =
        note === null
          ? ''
          : `: ${beside(note.struck, note.wanted)} instead of ${name(note.wanted)}${times[note.often]}`;
      const sentence = `This sounded like ${like}, not ${not}${because}`;
      return { sentence, half: sentence, emphasis: like };
    },
    'same-place-again': ({ fault: one }) => ({
      sentence: `Again at the same place: ${placed(one)}`,
      half: `again ${placed(one)}`,
      emphasis: placed(one),
    }),
    'leading-note': ({ fault: one, often: how, inCadence }) => {
      const place = inCadence ? '' : where(one.place);
      const what = joined(fault(one), how === null ? place : often(how));
      return {
        sentence: `${what}: the leading note is raised${inCadence ? ' in the V7' : ''}`,
        half: what,
        emphasis: what,
      };
    },
    signature: ({ fault: one, often: how, signature: { kind, names } }) => {
      const what = joined(fault(one), often(how));
      const signs =
        kind === 'none'
          ? 'no sharps or flats'
          : `${count(names.length)} ${kind === 'flats' ? 'flat' : 'sharp'}${names.length === 1 ? '' : 's'}`;
      return { sentence: `${what}: the key has ${signs}`, half: what, emphasis: what };
    },
    'landed-off': ({ notes: ones }) => {
      const [first, second] = ones as [FaultFacts, FaultFacts];
      return {
        sentence: `${count(ones.length)} wrong, the hand landed one key off: ${fault(first)} and ${placed(second)}`,
        half: `the hand landed one key off, ${notes(ones.length)}`,
        emphasis: 'one key off',
      };
    },
    'inner-note': ({ fault: one }) => {
      const what = joined('the inner note', name(one.wanted), one.hand === null ? '' : `(${one.hand} hand)`);
      const sentence = joined(what, 'does not sound', where(one.place));
      return { sentence, half: sentence, emphasis: what };
    },
    'wrong-notes': ({ notes: ones }) => faults(ones),
    'missed-notes': ({ notes: ones }) => faults(ones),
    slips: ({ keys }) => {
      const first = keys[0]!;
      const { struck, caughtWith, place } = first;
      const what =
        caughtWith === null
          ? joined('an extra', name(struck), where(place))
          : joined(beside(struck, caughtWith), 'caught with', name(caughtWith), where(place));
      return {
        sentence: keys.length === 1 ? what : `${count(keys.length)} keys too many, the first ${what}`,
        half: keys.length === 1 ? what : `${count(keys.length)} keys too many`,
        emphasis: what,
      };
    },
    repeats: ({ spots }) => {
      const what = struckTwice(say, spots[0]!.spot);
      const more = spots.length - 1;
      return {
        sentence: what + (more === 0 ? '' : `, and ${more === 1 ? 'one more' : `${count(more)} more`}`),
        half: more === 0 ? what : `${notes(spots.length)} struck twice`,
        emphasis: what,
      };
    },
    stopped: ({ at, gapSec }) => {
      const what = `after ${spot(at)}`;
      const sentence = `you stopped ${what}, for ${gapSec.toFixed(1)} s`;
      return { sentence, half: sentence, emphasis: what };
    },
    restarted: ({ at, back }) => {
      const what = `at ${spot(at)}`;
      const sentence = `${what} you ${back === null ? 'began again' : `went back to ${spot(back)}`}`;
      return { sentence, half: sentence, emphasis: what };
    },
    'broken-off': ({ at }) => {
      const what = `after ${spot(at)}`;
      return { sentence: `it breaks off ${what}`, half: `it breaks off ${what}`, emphasis: what };
    },
    'started-late': ({ at }) => {
      const what = spot(at);
      const sentence = `the first that was heard is ${what}`;
      return { sentence, half: sentence, emphasis: what };
    },
  };
}

/** "E is struck twice going up", "the last I is struck twice" */
function struckTwice({ name }: Notes, { note, place }: Parameters<Notes['spot']>[0]): string {
  return place.kind === 'chord'
    ? `the ${where(place).replace('in the ', '')} is struck twice`
    : joined(name(note), 'is struck twice', where(place));
}

/** One line for each note. */
export function partsAboutNotes(say: Notes): Parts {
  const { placed, beside, name } = say;
  const each = ({ notes: ones }: { readonly notes: readonly FaultFacts[] }) =>
    ones.map((one) => ({ text: placed(one), steps: [one.step] }));
  return {
    'wrong-notes': each,
    'missed-notes': each,
    'landed-off': each,
    slips: ({ keys }) =>
      keys.map(({ step, struck, caughtWith, place }) => ({
        steps: [step],
        text:
          caughtWith === null
            ? joined('an extra', name(struck), where(place))
            : joined(beside(struck, caughtWith), 'caught with', name(caughtWith), where(place)),
      })),
    repeats: ({ spots }) =>
      spots.map(({ step, spot }) => ({ steps: [step], text: capital(struckTwice(say, spot)) })),
  };
}
