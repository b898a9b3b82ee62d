import type { NoteNaming } from '../../../../exercise/index.ts';
import { keyName } from '../../../../exercise/index.ts';
import { tellNotice } from '../../../../notices/index.ts';
import type { Steps } from '../types.ts';
import { count, hands, list, tempo } from './places.ts';
import type { Notes } from './places.ts';
import { practising, RHYTHMS } from './practice.ts';

const VOICES = { lowest: 'the lowest note', inner: 'the middle note', highest: 'the highest note' } as const;
const DONE = 'until right three times in a row';

/** What to do next, for how long, and what counts as done. */
export function nextSteps({ only, part, stretch, name }: Notes, naming: NoteNaming): Steps {
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
      `${only(task)}, straight through that place, three times without a stop.`,
    'until-right': ({ task, note }) =>
      `${only(task)}, ${note === null ? DONE : `until ${name(note)} sounds three times in a row`}; then the whole.`,
    'one-note-more': ({ task }) =>
      `${only(task)}: two notes, then three, then one more each time, each length twice without a slip; then the whole.`,
    'five-times-right': ({ task }) => `${only(task)}, until right five times in a row.`,
    'cadence-alone': ({ note }) => `play i–V7–i alone, saying "${name(note)}" as you strike it, ${DONE}.`,
    'say-the-note': ({ task, note }) => `${only(task)}, saying "${name(note)}" as you strike it, ${DONE}.`,
    'say-the-signature': ({ signature: { kind, names } }) =>
      `say the signature (${kind === 'none' ? 'no sharps or flats' : list(names.map(name))}), play the scale once slowly, then this again.`,
    'position-as-a-chord': ({ names, task }) =>
      `strike ${names.map(name).join('–')} as one chord, lift, strike it again, three times; then note by note, ${tempo(task)}.`,
    'shape-silently': () =>
      'the whole slowly, each shape pressed silently first, all keys touched, then struck together; twice, so that every note sounds.',
    'middle-of-the-key': ({ task }) => `${only(task)}, each finger over the middle of its key, ${DONE}.`,
    'these-keys-only': ({ task }) => `${only(task)}, these keys and no other, ${DONE}.`,
    'go-on': ({ task }) => `${only(task)}; whatever happens, go on to the next note, three times.`,
    'cross-early': ({ task, kind }) =>
      kind === 'thumb-under'
        ? `${only(task)}, ${DONE}. Let the thumb set off early, and let go of the key behind as it passes.`
        : `${only(task)}, ${DONE}. Let the hand set off early, and let go with the thumb as it passes.`,
    'cross-in-rhythm': ({ task, rhythm }) =>
      `${only(task)}, ${RHYTHMS[rhythm]} twice, the other way round twice; then even, ${DONE}.`,
    'one-way-first': ({ task }) =>
      `${part(task, 'the way up only')}, ${DONE}; the way down in the same way; then both.`,
    'each-hand-alone': ({ task }) =>
      `each hand alone, ${stretch(task.stretch)}, ${tempo(task)}, until each is even three times in a row; then both hands.`,
    'next-shape': ({ task }) =>
      `${only(task)}: hold the chord, look at the next shape, then move as one, with no sound between, three times.`,
    'think-of-the-way-down': ({ task, chords }) =>
      `${only(task)}, three times: think of the way down before the top, and do not hold the top ${chords ? 'chord' : 'note'}.`,
    'the-other-rhythm': ({ task, rhythm }) =>
      `${only(task)}, the other way round, ${RHYTHMS[rhythm]}, three times; then even.`,
    rest: () =>
      'rest, and come back later or tomorrow. With pain or numbness stop, and ask your teacher or a doctor.',
    rhythms: ({ task }) => `${only(task)}, long–short twice, short–long twice; then even, twice.`,
    'slower-with-the-pulse': ({ task }) => `${only(task)}, with the pulse, three times; then the whole.`,
    'listen-to-the-other': ({ task, hand }) => `${only(task)}, listening to the ${hand} hand, three times.`,
    'stop-on-each-beat': ({ task }) =>
      `${only(task)}: stop on each beat, both hands together, then go on; three times.`,
    'fall-as-one': ({ last }) =>
      `touch all the keys before you press, ${
        last === null
          ? 'then let the arm fall into them at once'
          : `and let the arm’s weight reach ${VOICES[last]} too`
      }; the whole slowly, with a stop before each chord, twice.`,
    'at-the-tempo': ({ task }) => `the same, ${tempo(task)}.`,
    practise: ({ task, rhythm, times, before, intention = { rhythm, times } }) =>
      `${before ? 'now with what comes before: ' : ''}${only(task)}, ${practising(intention)}.`,
    'now-the-whole': ({ task }) => `now the whole, ${tempo(task)}.`,
    'same-tempo-with-the-pulse': () => 'the same tempo, with the pulse, twice.',
    'if-meant': () => 'if you meant it, the same again; if not, once with the pulse.',
    'the-same-again': ({ inARow }) =>
      inARow === null ? 'the same again.' : `the same again; ${count(inARow)} in a row make it ready.`,
    'make-it-stay': () => 'the same again, to make it stay.',
    'other-hand': ({ hand }) => `the ${hand} hand alone, in the same way; then hands together.`,
    'hands-together': ({ task, other }) =>
      `${hands('together')}, ${stretch(task.stretch)}, ${tempo(task)}, three times; the ${other} hand is ready too.`,
    'faster-or-next-key': ({ task, nextKey }) =>
      `the same, ${tempo(task)}; or the next key round the circle, ${keyName(nextKey, { language: 'en', naming })}.`,
  };
}
