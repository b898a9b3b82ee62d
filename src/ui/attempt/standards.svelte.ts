import {
  criteriaAsked,
  criteriaAt,
  criteriaOf,
  exerciseId,
  leastTempi,
  readyBounds,
  SYLLABUS_BPM,
  USUAL_GOALS,
  type AssignedExercise,
  type Criteria,
  type ExerciseChoice,
  type Goals,
  type ReadyBounds,
  type Syllabus,
} from '../../engine/index.ts';
import { readSyllabus } from '../../io/check/index.ts';

/** Keeps a small thing under its name. */
type Remember = (name: string, value: unknown) => Promise<unknown>;

/** What counts as ready, and what is asked for: by the player, by a teacher, by the levels. */
export class Standards {
  /** reports are written by it too */
  criteria: Criteria = $state.raw(criteriaOf({}));
  /** the levels, and how fast each exercise is to be */
  goals: Goals = $state.raw(USUAL_GOALS);
  /** what a teacher asks for, what counts most first */
  assigned: readonly AssignedExercise[] = $state.raw([]);
  readonly #remember: Remember;

  constructor(remember: Remember) {
    this.#remember = remember;
  }

  get bounds(): ReadyBounds {
    return readyBounds(this.criteria);
  }

  /** What an attempt is judged by: as usual, or as a teacher asks of this exercise. Null: it is not known yet. */
  criteriaFor(choice: ExerciseChoice | null): Criteria {
    if (choice === null) return this.criteria;
    const id = exerciseId(choice);
    const asked = this.assigned.find(({ exercise }) => exerciseId(exercise) === id);
    const usual = criteriaAt(this.goals, choice, this.criteria);
    const criteria = asked === undefined ? usual : criteriaAsked(asked, usual);
    return { ...criteria, leastBpm: asked?.targetBpm ?? leastTempi(this.goals, choice)[0] ?? null };
  }

  /** Sets what counts as ready; what is left out is as by default. */
  async setBounds(bounds: Partial<ReadyBounds>): Promise<void> {
    this.criteria = criteriaOf(bounds);
    await this.#remember('ready', readyBounds(this.criteria));
  }

  /** Sets the least tempo at which one exercise is ready, beats a minute; null: what the levels ask. */
  async setLeastBpm(choice: ExerciseChoice, bpm: number | null): Promise<void> {
    const id = exerciseId(choice);
    const others = Object.entries(this.goals.ownBpm).filter(([name]) => name !== id);
    const ownBpm = tempiIn(Object.fromEntries(bpm === null ? others : [...others, [id, bpm]]));
    this.goals = { ...this.goals, ownBpm };
    await this.#remember('least-tempi', ownBpm);
  }

  /** Puts other levels in place of those that hold. */
  async setSyllabus(syllabus: Syllabus): Promise<void> {
    this.goals = { ...this.goals, syllabus };
    await this.#remember('levels', syllabus);
  }

  /** Takes over what was remembered; it may come from a file. */
  restore(remembered: Readonly<Record<string, unknown>>): void {
    this.criteria = criteriaOf(numbersIn(remembered['ready']));
    const levels = readSyllabus(remembered['levels']);
    const syllabus = 'trouble' in levels ? USUAL_GOALS.syllabus : levels;
    this.goals = { syllabus, ownBpm: tempiIn(remembered['least-tempi']) };
  }
}

function numbersIn(value: unknown): Readonly<Record<string, number>> {
  if (value === null || typeof value !== 'object') return {};
  return Object.fromEntries(
    Object.entries(value).filter((entry): entry is [string, number] => typeof entry[1] === 'number'),
  );
}

/** Least tempi, within what may be asked. */
function tempiIn(value: unknown): Readonly<Record<string, number>> {
  const { least, most } = SYLLABUS_BPM;
  return Object.fromEntries(
    Object.entries(numbersIn(value)).filter(([, bpm]) => bpm >= least && bpm <= most),
  );
}
