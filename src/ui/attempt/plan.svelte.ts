import {
  buildExercise,
  copiesMeant,
  handsIn,
  hasOctaves,
  isWhole,
  keyFacts,
  notesABeat,
  octaveCounts,
  practisedExercise,
  samePassage,
  stretchIn,
  takesMinorScale,
} from '../../engine/index.ts';
import { readChoice, readPractice } from '../../io/check/index.ts';
import { recall, remember, type Settings } from '../../io/settings/index.ts';
import type {
  Assessment,
  Exercise,
  ExerciseChoice,
  Form,
  Intention,
  KeyFacts,
  MinorScale,
  Words,
} from '../../engine/index.ts';

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
  readonly key: KeyFacts = $derived(keyFacts(this.choice.key));
  #recognise = $state(false);
  #targetBpm: number | null = $state(FIRST_BPM);
  #wholeBpm: number | null = FIRST_BPM;
  #settings: Settings | null = null;

  get hasOctaves(): boolean {
    return hasOctaves(this.choice.form);
  }

  /** the note that stands for a beat: broken triads go three to a beat */
  get beatSign(): string {
    return beatSign(this.choice.form);
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
    this.adopt({ ...this.choice, ...part });
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
    const next: ExerciseChoice = {
      key: choice.key,
      form: choice.form,
      hands: written === 'together' ? choice.hands : written,
      octaves,
      ...(minor && choice.minorScale !== undefined ? { minorScale: choice.minorScale } : {}),
      ...(passage !== undefined && { passage }),
    };
    if (sameChoice(next, this.choice)) return;
    this.choice = next;
    this.wholeAgain();
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
export function beatSign(form: Form): string {
  return notesABeat(form) === 3 ? '♩.' : '♩';
}

/** Whether two choices are the same exercise. */
export function sameChoice(a: ExerciseChoice, b: ExerciseChoice): boolean {
  return (
    a.key === b.key &&
    a.form === b.form &&
    a.hands === b.hands &&
    a.octaves === b.octaves &&
    (a.minorScale ?? 'harmonic') === (b.minorScale ?? 'harmonic') &&
    samePassage(a.passage, b.passage)
  );
}
