import {
  buildExercise,
  copiesMeant,
  exerciseOf,
  handsFor,
  handsIn,
  hasOctaves,
  isWhole,
  keyFacts,
  notesABeat,
  notesABeatOf,
  isDotted,
  octaveCounts,
  practisedExercise,
  REGISTERS,
  samePassage,
  stretchIn,
  takesMinorScale,
  unfingered,
  type Assessment,
  type Exercise,
  type ExerciseChoice,
  type Intention,
  type KeyFacts,
  type MinorScale,
  type Words,
} from '../../engine/index.ts';
import { readChoice, readPractice } from '../../io/check/index.ts';
import { recall, remember, type Settings } from '../../io/settings/index.ts';

import { Fingerings } from './fingerings.svelte.ts';

export type Practice = NonNullable<Words['practice']>;

const FIRST_CHOICE: ExerciseChoice = { key: 'C major', form: 'arpeggio', hands: 'right', octaves: 2 };
const FIRST_BPM = 80;
/** under this name it is remembered */
const NAME = 'plan';

/** What is to be played: the exercise, the tempo aimed at, and a stretch of it to practise. */
export class Plan {
  choice: ExerciseChoice = $state.raw(FIRST_CHOICE);
  /** somebody has chosen: until then what is opened is recognised, whatever stands here */
  isOwn = $state(false);
  /** the exercise is told from the sound instead of chosen */
  get recognise(): boolean {
    return this.#recognise;
  }
  set recognise(now: boolean) {
    this.#recognise = now;
    this.#keep();
  }
  /** beats a minute; null: no aim */
  get targetBpm(): number | null {
    return this.#targetBpm;
  }
  set targetBpm(bpm: number | null) {
    this.#targetBpm = bpm;
    this.#keep();
  }
  practice: Practice | null = $state.raw(null);
  readonly exercise: Exercise = $derived(buildExercise(this.choice));
  /** what is written on the staff: where a rhythm is meant, or chords, the stretch by itself, once; else the whole */
  readonly written: Exercise = $derived(writtenOut(this.exercise, this.practice?.intention ?? null));
  /** the stretch that is marked there: none where it stands by itself */
  readonly marked: Practice | null = $derived(this.written === this.exercise ? this.stretch : null);
  readonly key: KeyFacts = $derived(keyFacts(this.choice.key));
  #recognise = $state(false);
  #targetBpm: number | null = $state(FIRST_BPM);
  #wholeBpm: number | null = FIRST_BPM;
  #settings: Settings | null = null;
  readonly fingerings: Fingerings;

  constructor(fingerings: Fingerings = new Fingerings()) {
    this.fingerings = fingerings;
  }

  get hasOctaves(): boolean {
    return hasOctaves(this.choice.form);
  }

  /** the note that stands for a beat: a dotted one where it has three notes or six */
  get beatSign(): string {
    return beatSign(this.choice);
  }

  get hasMinorScale(): boolean {
    return takesMinorScale(this.choice.key, this.choice.form);
  }

  /** The minor scale in use where there is one. */
  get minorScale(): MinorScale {
    return this.choice.minorScale ?? 'harmonic';
  }

  /** The stretch to be practised, where it is not the whole. */
  get stretch(): Practice | null {
    const { practice } = this;
    const whole = practice?.fromStep === 0 && practice.toStep === this.exercise.steps.length - 1;
    return whole ? null : practice;
  }

  /** What is to be practised of the exercise, by which an attempt is judged; null: it is played as it is written. */
  get intention(): Intention | null {
    return this.practice?.intention ?? null;
  }

  /** What an attempt that begins now is to be. */
  get aim(): { choice: ExerciseChoice | null; targetBpm: number | null; intention: Intention | null } {
    const choice = this.recognise ? null : this.choice;
    return { choice, targetBpm: this.targetBpm, intention: this.intentionFor(choice) };
  }

  /** The same for another choice: only the hand may be another. */
  intentionFor(choice: ExerciseChoice | null): Intention | null {
    const same = choice !== null && sameChoice({ ...choice, hands: this.choice.hands }, this.choice);
    return same ? this.intention : null;
  }

  /** Changes part of the choice; what does not fit the new form or key falls away. */
  choose(part: Partial<ExerciseChoice>): void {
    const whole = { ...this.choice, ...part };
    if (part.form !== undefined && part.hands === undefined && !handsFor(part.form).includes(whole.hands))
      whole.hands = 'together';
    if (part.fingering !== undefined) this.fingerings.keep(whole);
    this.adopt(part.fingering === undefined ? unfingered(whole) : whole);
    this.#chosen();
  }

  /** Plays the same exercise so many octaves from where books print it. */
  moveTo(octaves: number): void {
    const { register: _, ...printed } = this.choice;
    const register = REGISTERS.find((one) => one === octaves);
    this.adopt({ ...printed, ...(register !== undefined && { register }) });
    this.#chosen();
  }

  /** Plays the same exercise under other fingers, from here on; without any of its own, under the usual ones. */
  finger(choice: ExerciseChoice): void {
    if (choice.passage === undefined) this.fingerings.keep(choice);
    this.adopt(unfingered(choice));
    this.#chosen();
  }

  #chosen(): void {
    this.isOwn = true;
    this.recognise = false;
  }

  /** What was chosen is as it was when the page was open last, and what is chosen from now on outlives the page. */
  remember(settings: Settings): void {
    const kept = recall(settings, NAME);
    if (typeof kept === 'object' && kept !== null) this.#restore({ ...kept });
    this.#settings = settings;
  }

  #keep(): void {
    if (this.#settings === null) return;
    const isSaid = this.isOwn || this.recognise || recall(this.#settings, NAME) !== null;
    if (!isSaid) return;
    const { isOwn, choice, recognise, practice } = this;
    const targetBpm = this.practice === null ? this.targetBpm : this.#wholeBpm;
    remember(this.#settings, NAME, { isOwn, choice, recognise, targetBpm, practice });
  }

  #restore({ isOwn, choice, recognise, targetBpm, practice }: Readonly<Record<string, unknown>>): void {
    const known = readChoice(choice);
    if (known === null) return;
    this.choice = known;
    this.isOwn = isOwn === true;
    this.recognise = recognise === true;
    if (targetBpm === null || isTempo(targetBpm)) this.targetBpm = targetBpm;
    const setUp = readPractice(practice, known);
    if (setUp !== null) this.setUp(setUp);
  }

  /** The example stands here where nobody has chosen; it never takes the place of a choice. */
  showExample(choice: ExerciseChoice, targetBpm: number | null): void {
    if (this.isOwn) return;
    this.adopt(choice);
    this.wholeAgain();
    this.targetBpm = targetBpm;
  }

  /** What was measured is what is planned; another exercise than chosen is measured, but the choice stays. */
  measured(assessment: Assessment): void {
    if (assessment.kind === 'report')
      this.adopt(assessment.alignment.chosen ?? assessment.alignment.exercise.choice);
    // What cannot be recognised must be chosen: the choice is shown again.
    if (assessment.kind === 'not-recognised') this.recognise = false;
  }

  /** Takes over a whole choice, e.g. the exercise that was recognised. */
  adopt(choice: ExerciseChoice): void {
    const octaves = Math.min(choice.octaves, octaveCounts(choice.form).length);
    const minor = takesMinorScale(choice.key, choice.form);
    const passage = choice.form === 'passage' ? choice.passage : undefined;
    const written = passage === undefined ? 'together' : handsIn(passage);
    const plain: ExerciseChoice = {
      key: choice.key,
      form: choice.form,
      hands: written === 'together' ? choice.hands : written,
      octaves,
      ...(minor && choice.minorScale !== undefined ? { minorScale: choice.minorScale } : {}),
      ...(passage !== undefined && { passage }),
    };
    const next = this.fingerings.of(withOthers(plain, choice));
    const same = sameChoice(next, this.choice);
    if (same && sameOthers(next, this.choice)) return;
    this.choice = next;
    if (!same) this.wholeAgain();
  }

  /** Sets up the stretch and the tempo that a next step proposes: whoever does so has chosen. */
  setUp(practice: Practice): void {
    this.#chosen();
    if (practice.hands !== undefined) this.adopt({ ...this.choice, hands: practice.hands });
    if (this.practice === null) this.#wholeBpm = this.targetBpm;
    this.practice = practice;
    this.targetBpm = Math.round(practice.tempoBpm);
  }

  /** Chooses how the exercise is to be practised, at the tempo aimed at. */
  intend(intention: Intention): void {
    if (isWhole(intention)) return this.wholeAgain();
    const { targetBpm } = this;
    const whole = { fromStep: 0, toStep: this.exercise.steps.length - 1 };
    this.setUp({ ...(intention.stretch ?? whole), tempoBpm: targetBpm ?? FIRST_BPM, intention });
    // Nobody is given a tempo that nobody chose.
    this.targetBpm = targetBpm;
  }

  /** Back from a stretch to the whole exercise and its tempo. */
  wholeAgain(): void {
    if (this.practice === null) return;
    this.practice = null;
    this.targetBpm = this.#wholeBpm;
  }
}

/** What is not as usual, as far as this exercise can have it: another form or key may not. */
function withOthers(
  plain: ExerciseChoice,
  { notesABeat: beat, register, fingering }: ExerciseChoice,
): ExerciseChoice {
  const isAsked = beat !== undefined && beat !== notesABeat({ form: plain.form });
  const inTime = {
    ...plain,
    ...(isAsked && notesABeatOf(plain.form).includes(beat) && { notesABeat: beat }),
  };
  const there = { ...inTime, ...(register !== undefined && plain.passage === undefined && { register }) };
  const fingered = { ...there, ...(fingering !== undefined && { fingering }) };
  return [fingered, there].find((one) => exerciseOf(one) !== null) ?? inTime;
}

const sameOthers = (a: ExerciseChoice, b: ExerciseChoice): boolean =>
  a.register === b.register &&
  JSON.stringify([a.fingering, a.passage]) === JSON.stringify([b.fingering, b.passage]);

function writtenOut(exercise: Exercise, intention: Intention | null): Exercise {
  if (intention === null || (intention.rhythm === 'even' && intention.blocked !== true)) return exercise;
  const once = { ...intention, times: 1 };
  const repeats = copiesMeant(once, stretchIn(exercise, once).length);
  return practisedExercise(exercise.choice, { intention: once, repeats });
}

/** Whatever may be aimed at, beats a minute, and more. */
function isTempo(bpm: unknown): bpm is number {
  return typeof bpm === 'number' && bpm >= 10 && bpm <= 400;
}

/** The sign of the note that is one beat long. */
export function beatSign(choice: Pick<ExerciseChoice, 'form' | 'notesABeat'>): string {
  return isDotted(choice) ? '♩.' : '♩';
}

/** Whether two choices are the same exercise. */
export function sameChoice(a: ExerciseChoice, b: ExerciseChoice): boolean {
  return (
    a.key === b.key &&
    a.form === b.form &&
    a.hands === b.hands &&
    a.octaves === b.octaves &&
    (a.minorScale ?? 'harmonic') === (b.minorScale ?? 'harmonic') &&
    a.notesABeat === b.notesABeat &&
    samePassage(a.passage, b.passage)
  );
}
