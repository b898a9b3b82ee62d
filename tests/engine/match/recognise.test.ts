import { describe, expect, it } from 'vitest';
import type { ExerciseChoice, Form, Hands } from '../../../src/engine/exercise/index.ts';
import { allChoices, buildExercise, isRecognised } from '../../../src/engine/exercise/index.ts';
import { SET } from '../../../src/engine/standing/index.ts';
import { LEAST_CONFIDENCE, matchNotes, recogniseFrom } from '../../../src/engine/match/index.ts';
import { NO_MISTAKES } from '../../support/student/knobs.ts';
import { createRandom } from '../../support/random.ts';
import { attempt, GOOD_LISTENER, heardOf, played } from './simulated.ts';

const CHOICES = allChoices().filter(isRecognised);
const KINDS = [...new Set(CHOICES.map(({ form, hands }) => `${form}, ${hands}`))];

describe('recognising the exercise from the notes', () => {
  it.each(KINDS)('tells key, octaves and scale of %s, played by a tidy student', (kind) => {
    const wrong = CHOICES.filter(({ form, hands }) => `${form}, ${hands}` === kind)
      .filter((_, index) => index % 5 === 0)
      .filter((choice, seed) => {
        const { heard, exercise } = attempt(choice, { jitterMs: 12 }, GOOD_LISTENER, seed);
        const found = recogniseFrom(heard).choice;
        return JSON.stringify(found) !== JSON.stringify(exercise.choice);
      });
    expect(wrong).toEqual([]);
  });

  const SET_FORMS: readonly Form[] = SET;
  const ASKED_OF_EVERY_KEY = CHOICES.filter(({ form }) => SET_FORMS.includes(form));

  it('names the right key and form, or none, for 200 students with three mistakes each, in what every key is asked for', () => {
    const random = createRandom(11);
    const outcomes = Array.from({ length: 200 }, (_, seed) => {
      const choice = random.pick(ASKED_OF_EVERY_KEY);
      const mistakes = { ...NO_MISTAKES, wrong: 1, missed: 1, slips: 1 };
      const { heard } = attempt(choice, { mistakes, jitterMs: 20 }, GOOD_LISTENER, seed);
      const found = recogniseFrom(heard).choice;
      if (found === null) return 'none';
      return found.key === choice.key && found.form === choice.form ? 'right' : 'wrong';
    });
    expect(outcomes.filter((outcome) => outcome === 'wrong')).toHaveLength(0);
    expect(outcomes.filter((outcome) => outcome === 'right').length).toBeGreaterThanOrEqual(185);
  });

  it('tells of 100 attempts at all forms in turn, with a fault or none, 97 exactly, the hand aside, and none as another', () => {
    const random = createRandom(23);
    const forms = [...new Set(CHOICES.map(({ form }) => form))];
    const outcomes = Array.from({ length: 100 }, (_, seed) => {
      const choice = random.pick(CHOICES.filter(({ form }) => form === forms[seed % forms.length]));
      const mistakes = { ...NO_MISTAKES, wrong: seed % 2 };
      const { heard, exercise } = attempt(choice, { mistakes, jitterMs: 15 }, GOOD_LISTENER, seed);
      const found = recogniseFrom(heard).choice;
      if (found === null) return 'none';
      const alone = (hands: Hands): boolean => hands !== 'together';
      const isAsPlayed =
        alone(found.hands) && alone(choice.hands) ? { ...found, hands: choice.hands } : found;
      return JSON.stringify(isAsPlayed) === JSON.stringify(exercise.choice) ? 'right' : 'wrong';
    });
    expect(outcomes.filter((outcome) => outcome === 'wrong')).toEqual([]);
    expect(outcomes.filter((outcome) => outcome === 'right').length).toBeGreaterThanOrEqual(97);
  });

  it('asks about a cadence with two notes otherwise: songs go round in such chords', () => {
    const form = 'cadence-second-octave';
    const { heard } = attempt({ key: 'C major', form, hands: 'together', octaves: 1 });
    expect(recogniseFrom(heard).choice?.form).toBe(form);
    // I–IV–IV–V–I, without the second degree and the seventh
    const song = heard.notes.map((note) => ({ ...note, midi: note.midi === 74 ? 72 : note.midi }));
    const other = song.map((note, at) => (note.midi === 65 && at > 11 ? { ...note, midi: 62 } : note));
    const { choice, alternatives } = recogniseFrom(heardOf(other));
    expect(choice).toBeNull();
    expect(alternatives[0]!.choice).toMatchObject({ key: 'C major', form });
    expect(alternatives[0]!.fit).toBeGreaterThan(0.5);
    expect(alternatives[0]!.fit).toBeLessThan(1);
  });

  it('takes a scale in octaves by one hand for the scale by both, which has the same keys', () => {
    const { heard } = attempt({ key: 'D major', form: 'scale-in-octaves', hands: 'right', octaves: 2 });
    expect(recogniseFrom(heard).choice).toMatchObject({ key: 'D major', form: 'scale', hands: 'together' });
  });

  it('takes a single line in the bass for the left hand and one in the treble for the right', () => {
    const low = attempt({ key: 'F major', hands: 'left', octaves: 2 });
    const high = attempt({ key: 'F major', hands: 'right', octaves: 2 });
    expect(recogniseFrom(low.heard).choice?.hands).toBe('left');
    expect(recogniseFrom(high.heard).choice?.hands).toBe('right');
  });

  it('takes a piano read 35 cents sharp for one read a semitone low: few stand so sharp, many 65 cents flat', () => {
    const { heard } = attempt({ key: 'F major', octaves: 2 }, {}, { readsOff: -1, tuningCents: 35 });
    const { choice, alternatives } = recogniseFrom(heard);
    expect(choice?.key).toBe('F major');
    expect(alternatives[0]?.choice.key).toBe('E major');
    const { heard: atPitch } = attempt({ key: 'F major', octaves: 2 }, {}, { tuningCents: 11.8 });
    expect(recogniseFrom(atPitch)).toMatchObject({ choice: { key: 'F major' } });
  });

  it('cannot tell which of two keys it was on a piano read 20 cents sharp, and says so', () => {
    const { heard } = attempt({ key: 'F major', octaves: 2 }, {}, { tuningCents: 20.5 });
    const { choice, confidence, alternatives } = recogniseFrom(heard);
    expect(choice).toBeNull();
    expect(confidence).toBeLessThan(LEAST_CONFIDENCE);
    // Every note is right, and explained by either.
    expect(alternatives.slice(0, 2).map(({ fit }) => fit)).toEqual([1, 1]);
    const keys = alternatives.slice(0, 2).map((other) => other.choice.key);
    expect(keys.sort()).toEqual(['F major', 'F# major']);
  });

  it('tells no key a semitone away among what else it may be where the tuning leaves none open', () => {
    const { heard } = attempt({ key: 'F major', octaves: 2 }, {}, { tuningCents: 3 });
    const { choice, alternatives } = recogniseFrom(heard);
    const asF = alternatives.filter((one) => one.choice.form === choice!.form && one.choice.octaves === 2);
    expect(choice?.key).toBe('F major');
    expect(asF.filter(({ choice: { key } }) => key === 'E major' || key === 'F# major')).toEqual([]);
  });

  it.each([
    [25, 'F major'],
    [-75, 'F# major'],
  ])('knows on a piano of %d cents, if that is known, that it was %s', (pianoCents, key) => {
    const { heard } = attempt({ key: 'F major', octaves: 2 }, {}, { tuningCents: 25 });
    const { choice, confidence } = recogniseFrom(heard, { pianoCents });
    expect(choice?.key).toBe(key);
    expect(confidence).toBeGreaterThan(0.95);
  });

  it('knows on a piano in tune what it was, beside one at home that a semitone higher would be read so', () => {
    const { heard } = attempt({ key: 'F major', octaves: 2 }, {}, { tuningCents: 4 });
    // 91 cents flat at home: as near to what was read as can be told by it alone.
    const asAtHome = recogniseFrom(heard, { pianoCents: -91 });
    const both = recogniseFrom(heard, { pianoCents: -91, elsewhereCents: [4] });
    expect(asAtHome.choice?.key).toBe('F# major');
    expect(both.choice?.key).toBe('F major');
    const home = attempt({ key: 'F major', octaves: 2 }, {}, { tuningCents: -91 });
    expect(recogniseFrom(home.heard, { pianoCents: 4, elsewhereCents: [-91] }).choice?.key).toBe('F major');
  });

  it('tells the octave in which it lies, up or down with the playing', () => {
    for (const octaveShift of [-1, 0, 1]) {
      const { heard } = attempt({ form: 'triads', hands: 'together' }, { octaveShift });
      expect(recogniseFrom(heard)).toMatchObject({ choice: { form: 'triads' }, octaveShift });
    }
  });

  it('knows a scale whose lowest key did not sound', () => {
    const { heard, exercise } = attempt({ key: 'F major', form: 'scale', octaves: 2 });
    const lowest = Math.min(...heard.notes.map(({ midi }) => midi));
    const notes = heard.notes.filter(({ midi }) => midi > lowest);
    expect(notes).toHaveLength(heard.notes.length - 2);
    expect(recogniseFrom({ ...heard, notes }).choice).toEqual(exercise.choice);
  });

  it('tells a chord played as one from its notes one by one, and one octave from two', () => {
    const kinds: Partial<ExerciseChoice>[] = [
      { form: 'triads' },
      { form: 'broken-triads' },
      { form: 'progression' },
      { octaves: 1 },
      { octaves: 2 },
    ];
    for (const kind of kinds) {
      const { heard, exercise } = attempt({ key: 'Eb major', ...kind });
      expect(recogniseFrom(heard).choice).toEqual(exercise.choice);
    }
  });

  it('is less sure of one that is broken off, and of one with many faults', () => {
    const { heard: whole } = attempt({ form: 'scale', octaves: 2 });
    const { heard: part } = attempt({ form: 'scale', octaves: 2 }, { stopAfter: 0.6 });
    const mistakes = { ...NO_MISTAKES, wrong: 4, missed: 2 };
    const { heard: faulty } = attempt({ form: 'scale', octaves: 2 }, { mistakes });
    const sure = recogniseFrom(whole).confidence;
    expect(recogniseFrom(part).confidence).toBeLessThan(sure);
    expect(recogniseFrom(faulty).confidence).toBeLessThan(sure);
  });

  it('asks whether a scale of which one note is another both ways was that scale: it may be a church mode', () => {
    const { heard } = attempt({ key: 'G major', form: 'scale' });
    const forgotten = heard.notes.map((note) =>
      note.midi % 12 === 6 ? { ...note, midi: note.midi - 1 } : note,
    );
    const { choice, confidence, alternatives } = recogniseFrom(heardOf(forgotten));
    expect(choice).toBeNull();
    expect(confidence).toBeLessThan(LEAST_CONFIDENCE);
    expect(alternatives[0]!.choice).toMatchObject({ key: 'G major', form: 'scale' });
  });

  it.each([
    ['nothing', []],
    ['two notes', [60, 64]],
    ['a chromatic scale', [60, 61, 62, 63, 64, 65, 66, 67, 68, 69, 70, 71, 72]],
    ['a tune', [67, 67, 69, 67, 72, 71, 67, 67, 69, 67, 74, 72]],
    ['keys at random', [41, 88, 63, 70, 55, 90, 37, 66, 81, 58]],
    ['five fingers up and down', [60, 62, 64, 65, 67, 65, 64, 62, 60]],
    ['a broken accompaniment', [60, 67, 64, 67, 60, 67, 64, 67, 59, 67, 65, 67, 60, 67, 64, 67]],
    ['a seventh arpeggio', [60, 64, 67, 70, 72, 76, 79, 82, 84, 82, 79, 76, 72, 70, 67, 64, 60]],
    ['a wrong start', [60, 62, 64, 65, 67]],
  ])('says nothing of %s', (_, keys) => {
    expect(
      recogniseFrom(heardOf(keys.map((midi, index) => played(1 + 0.4 * index, midi)))).choice,
    ).toBeNull();
  });
});

describe('another exercise than the one chosen', () => {
  const chosen: ExerciseChoice = { key: 'A major', form: 'arpeggio', hands: 'right', octaves: 2 };

  it.each<[string, Partial<ExerciseChoice>]>([
    ['another key', { key: 'E major' }],
    ['the minor', { key: 'A minor' }],
    ['one octave instead of two', { octaves: 1 }],
    ['the scale', { form: 'scale' }],
    ['both hands', { hands: 'together' }],
    ['the triads', { form: 'triads', octaves: 1 }],
  ])('%s is named', (_, other) => {
    const { heard } = attempt({ ...chosen, ...other }, { jitterMs: 12 }, GOOD_LISTENER);
    const { betterFit } = matchNotes(heard, buildExercise(chosen));
    expect(betterFit?.choice).toMatchObject({ ...chosen, ...other });
  });

  it('the same line by the other hand is not: a hand cannot be heard', () => {
    const { heard } = attempt({ ...chosen, hands: 'left' });
    const alignment = matchNotes(heard, buildExercise(chosen));
    expect(alignment.betterFit).toBeUndefined();
    expect(alignment.octaveShift).toBe(-1);
  });

  it('a bad attempt at the chosen one is not', () => {
    const mistakes = { wrong: 2, missed: 1, slips: 1, repeats: 0, restarts: 0 };
    for (let seed = 0; seed < 50; seed++) {
      const { heard, exercise } = attempt(chosen, { mistakes, jitterMs: 25 }, GOOD_LISTENER, seed);
      expect(matchNotes(heard, exercise).betterFit).toBeUndefined();
    }
  });
});
