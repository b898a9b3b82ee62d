import type { NoteNaming } from '../../../../exercise/index.ts';
import { keyName } from '../../../../exercise/index.ts';
import { tellNotice } from '../../../../notices/index.ts';
import type { Task } from '../../said/index.ts';
import { ofChords } from '../types.ts';
import type { Steps } from '../types.ts';
import { count, hands, list, tempo } from './places.ts';
import type { Notes } from './places.ts';
import { practising, RHYTHMS } from './practice.ts';

const VOICES = { lowest: 'the lowest note', inner: 'the middle note', highest: 'the highest note' } as const;
const DONE = 'until right three times in a row';

const thenWhole = ({ stretch: { kind } }: Task): string => (kind === 'whole' ? '' : '; then the whole');

/** What to do next, for how long, and what counts as done. */
export function nextSteps({ only, stretch, name }: Notes, naming: NoteNaming): Steps {
  return {
    'record-again': ({ finding }) =>
      finding === null
        ? 'play it again with the device one to two metres from the piano.'
        : tellNotice(finding, { language: 'en', naming }),
    'check-the-choice': () => 'check the key and the exercise, then play it again.',
    'switch-or-again': () => 'switch to it if that is what you meant, or play the exercise chosen once more.',
    'go-on-or-the-other': () => 'go on with it, or say that you meant the other.',
    'wait-then-begin': () => 'wait until it listens, then play from the beginning.',
    'straight-through': ({ task }) =>
      `${only(task)}, straight through that place, three times in a row without a stop${thenWhole(task)}.`,
    'until-right': ({ task, note }) =>
      `${only(task)}, ${note === null ? DONE : `until ${name(note)} sounds three times in a row`}${thenWhole(task)}.`,
    'one-note-more': ({ task }) =>
      `${only(task)}: two ${ofChords(task) ? 'chords' : 'notes'}, then three, then one more each time, each length twice without a slip${thenWhole(task)}.`,
    'five-times-right': ({ task }) => `${only(task)}, until right five times in a row${thenWhole(task)}.`,
    'cadence-alone': ({ task, note }) => `${only(task)}, saying "${name(note)}" as you strike it, ${DONE}.`,
    'say-the-note': ({ task, note }) => `${only(task)}, saying "${name(note)}" as you strike it, ${DONE}.`,
    'say-the-signature': ({ signature: { kind, names }, task, note }) =>
      `say the signature (${kind === 'none' ? 'no sharps or flats' : list(names.map(name))}); then ${only(task)}, until ${name(note)} is right three times in a row${thenWhole(task)}.`,
    'position-as-a-chord': ({ names, task }) =>
      `strike ${names.map(name).join('–')} as one chord, lift, strike it again, three times; then note by note, ${tempo(task)}, ${DONE}.`,
    'shape-silently': ({ task }) =>
      `${only(task)}, each pressed silently first, until every note sounds three times in a row.`,
    'middle-of-the-key': ({ task }) =>
      `${only(task)}, each finger over the middle of its key, ${DONE}${thenWhole(task)}.`,
    'these-keys-only': ({ task }) => `${only(task)}, these keys and no other, ${DONE}${thenWhole(task)}.`,
    'go-on': ({ task }) =>
      `${only(task)}; whatever happens, go on to the next ${ofChords(task) ? 'chord' : 'note'}, three times in a row.`,
    'cross-early': ({ task }) =>
      `${only(task)}, ${DONE}. Set off early for the note after the crossing, and let go of the key behind as you pass.`,
    'cross-in-rhythm': ({ task, rhythm }) =>
      `${only(task)}, first ${RHYTHMS[rhythm]}, then the other way round, then even, each until right twice in a row.`,
    'one-way-first': ({ task }) => `${only(task)}, ${DONE}; the way down in the same way; then both.`,
    'each-hand-alone': ({ task }) =>
      `each hand alone, ${stretch(task.stretch)}, ${tempo(task)}, until each is even three times in a row; then both hands.`,
    'next-shape': ({ task }) =>
      `${only(task)}: hold the chord, look at the next shape, then move as one, until it comes in time three times in a row.`,
    'think-of-the-way-down': ({ task, chords }) =>
      `${only(task)}: think of the way down before the top ${chords ? 'chord' : 'note'}, until it goes on in time three times in a row.`,
    'the-other-rhythm': ({ task, rhythm }) =>
      `${only(task)}, the other way round, ${RHYTHMS[rhythm]}, then even, each until right three times in a row.`,
    rest: () =>
      'rest, and come back later or tomorrow. With pain or numbness stop, and ask your teacher and a health professional.',
    rhythms: ({ task }) =>
      `${only(task)}, first long–short, then short–long, then even, each until right twice in a row.`,
    'slower-with-the-pulse': ({ task }) =>
      `${only(task)}, with the pulse, until even three times in a row${thenWhole(task)}.`,
    'listen-to-the-other': ({ task, hand }) =>
      `${only(task)}, listening to the ${hand} hand, until both come together three times in a row.`,
    'stop-on-each-beat': ({ task }) => `${only(task)}: stop on each beat, both hands together, ${DONE}.`,
    'fall-as-one': ({ task, last }) =>
      `${only(task)}: all keys touched first, ${
        last === null ? 'then down at once' : `weight on ${VOICES[last]}`
      }, until three in a row sound as one.`,
    'at-the-tempo': ({ task }) => `the same, ${tempo(task)}, until even three times in a row.`,
    practise: ({ task, rhythm, times, before, rung, intention = { rhythm, times } }) => {
      const lead = before
        ? 'now with what comes before: '
        : rung === undefined
          ? ''
          : rung === 'up'
            ? 'the next rung: '
            : 'two rungs back, and stay there for now: ';
      return `${lead}${only(task)}, ${practising(intention)}.`;
    },
    'now-the-whole': ({ task }) => `now the whole, ${tempo(task)}.`,
    'same-tempo-with-the-pulse': ({ task }) =>
      `${only(task)}, with the pulse, until even three times in a row${thenWhole(task)}.`,
    'if-meant': () => 'if you meant it, the same again; if not, with the pulse, until even twice in a row.',
    'the-same-again': ({ inARow, days }) => {
      if (inARow === null) return 'the same once more, from the beginning.';
      const on = days === undefined ? '' : `, on ${count(days)} days,`;
      return `the same again; ${count(inARow)} in a row${on} make it ready.`;
    },
    'on-another-day': () => 'once more on another day; then it is ready.',
    'make-it-stay': () => 'the same once more, to make it stay.',
    'other-hand': ({ hand, task }) =>
      `the ${hand} hand alone, ${tempo(task)}, until even three times in a row; then hands together.`,
    'hands-together': ({ task, other }) =>
      `${hands('together')}, ${stretch(task.stretch)}, ${tempo(task)}, until right three times in a row; the ${other} hand is ready too.`,
    'faster-or-next-key': ({ task, nextKey }) =>
      `the same, ${tempo(task)}, until even three times in a row; or the next key round the circle, ${keyName(nextKey, { language: 'en', naming })}.`,
  };
}
