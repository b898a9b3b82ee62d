import { isDotted, isWhole } from '../../exercise/index.ts';
import type { Locale } from '../../exercise/index.ts';
import { evennessDriftRemovedPercent, isMeasured, surelyOver } from '../measures/index.ts';
import { mean } from '../../base/statistics.ts';
import type { Figure, Words } from '../types.ts';
import { improvement, sameTrouble } from './better.ts';
import { CHANGES, INNER, SPREAD } from './chords.ts';
import { COURSE } from './course.ts';
import { CROSSING } from './crossing.ts';
import { BESIDES } from './dynamics.ts';
import { EXTRAS } from './extras.ts';
import { everyNoteRight, noNoteWrong } from './faults.ts';
import { inGroups, withoutGroups } from './groups.ts';
import { HANDS } from './hands.ts';
import { practiceWith } from './practice.ts';
import { ASKED, PROGRESS } from './progress.ts';
import { blamesNotes, RULES } from './rules/index.ts';
import type { Improved, Said, SituationName, Statement } from './said/index.ts';
import type { Found, Scene, Situations } from './scene.ts';
import { setUpOf } from './set-up.ts';
import { MEANT, shapeOf } from './shaping.ts';
import { tellSaid } from './telling/index.ts';
import { DRIFT, EVENNESS, LATE_NOTES, TURN } from './time.ts';
import { LOST, USABLE } from './usable.ts';
import { NOTES } from './wrong.ts';

export { sceneFacts } from './scene.ts';
export type { Scene } from './scene.ts';
export { RULES } from './rules/index.ts';
export type { Rule } from './rules/index.ts';
export { SAID } from './said/index.ts';
export type { Said, SituationName, Statement } from './said/index.ts';
export { spellPlayedWithOctave } from './spelling.ts';
export { tellWords } from './telling/index.ts';
export type { ToldWords } from './telling/index.ts';

/** Of each of these the first situation that holds speaks: the others would tell the same again. */
const FAULTS: readonly Situations[] = [
  NOTES,
  ...oneByOne(EXTRAS),
  ...oneByOne(COURSE),
  CROSSING,
  CHANGES,
  LATE_NOTES,
  TURN,
  EVENNESS,
  DRIFT,
  HANDS,
  SPREAD,
  INNER,
];

/** Copies of a stretch may each have their own tempo. */
const FAULTS_IN_PRACTICE = FAULTS.filter((group) => group !== DRIFT);

/** All situations that can be said, in the order in which they are tried. */
export const SITUATIONS = [
  LOST,
  USABLE,
  { practised: practiceWith([]) },
  ...FAULTS,
  MEANT,
  BESIDES,
  ASKED,
  PROGRESS,
].flatMap((some: Situations) => Object.keys(some) as SituationName[]);

/** A scene → what is said of it, as values and in a language. */
export function speak(scene: Scene, locale: Locale): Words {
  const all = whatHolds(scene);
  const [first] = all as [Found, ...Found[]];
  const statements = all.map(({ statement }) => statement);
  const improved = improvedTrouble(scene, first);
  const said: Said = {
    statements,
    named: howManyNamed(all),
    notes: {
      right: scene.alignment.matched.filter(({ verdict }) => verdict === 'correct').length,
      of: scene.alignment.matched.length,
    },
    opening: openingOf(scene, first),
    restIsEven: restIsEven(scene, statements),
    ...(improved !== null && { improved }),
    advice: first.advice,
    ...(isDotted(scene.exercise.choice) && { dotted: true }),
  };
  const { verdict, emphasis, nextStep } = tellSaid(said, locale);
  const practice = setUpOf(scene, first);
  const blamed = statements.filter(({ faults }, at) => faults > 0 || at === 0);
  return {
    situation: spokenOf(scene, statements),
    verdict,
    emphasis,
    nextStep,
    steps: [...new Set(blamed.flatMap(({ steps }) => steps))],
    ...(practice !== undefined && { practice }),
    said,
  };
}

/** Of these every one that holds speaks. */
function oneByOne(situations: Situations): readonly Situations[] {
  return Object.entries(situations).map(([name, find]) => ({ [name]: find }));
}

function firstOf(situations: Situations, scene: Scene): Found | null {
  for (const find of Object.values(situations)) {
    const found = find(scene);
    if (found !== null) return found;
  }
  return null;
}

const allOf = (groups: readonly Situations[], scene: Scene): readonly Found[] =>
  groups.flatMap((group) => firstOf(group, scene) ?? []);

/** Everything that holds, the gravest first; what is asked comes last. */
function whatHolds(scene: Scene): readonly Found[] {
  const lost = firstOf(LOST, scene);
  // Wrong keys were heard all the same; nothing else can be told apart from what is not there.
  if (lost !== null) return [lost, ...allOf([NOTES], scene), ...allOf([ASKED], scene)];
  const unusable = firstOf(USABLE, scene);
  // Of another exercise than chosen, where it is the one measured, the rest is told too.
  const measured = scene.alignment.chosen !== undefined;
  if (unusable !== null && !measured) return [unusable];
  const first = unusable === null ? [] : [unusable];
  const kinds = scene.exercise.practised === undefined ? FAULTS : FAULTS_IN_PRACTICE;
  const faults = byGravity(withoutGroups(scene, withoutSymptoms(scene, allOf(kinds, scene))));
  const asked = allOf([ASKED], scene);
  const practice = practiceWith(faults)(scene);
  if (practice !== null && unusable === null && !isTheWhole(scene)) return [practice, ...faults, ...asked];
  const rest = whatElse(scene, first, faults, asked);
  if (practice === null || unusable !== null) return rest;
  // The whole is judged like any other attempt, and what is said of that leads on.
  const { advice, practice: next } = rest[0]!;
  return [{ statement: practice.statement, advice, ...(next && { practice: next }) }, ...rest];
}

const isTheWhole = ({ exercise: { practised } }: Scene): boolean =>
  practised !== undefined && isWhole(practised.intention);

/** What an attempt is remembered by: of the whole, what would have been said of it anyhow. */
function spokenOf(scene: Scene, [first, second]: readonly Statement[]): string {
  return (isTheWhole(scene) && second !== undefined ? second : first!).situation;
}

/** Of an attempt at the whole: faults, what may be meant, how far it is; what is asked comes last. */
function whatElse(
  scene: Scene,
  first: readonly Found[],
  faults: readonly Found[],
  asked: readonly Found[],
): readonly Found[] {
  const grouped = inGroups(scene);
  const meant = grouped === null ? allOf(oneByOne(MEANT), scene) : [grouped];
  const besides = [...allOf(oneByOne(BESIDES), scene), ...asked];
  if (faults.length + first.length > 0) return [...first, ...faults, ...meant, ...besides];
  const progress = firstOf(PROGRESS, scene)!;
  const { situation } = progress.statement;
  // What was meant is not called "not yet quite even"; an ending is not in that figure.
  const ofAll = meant.some(({ statement }) => !ENDINGS.includes(statement.situation));
  const plain = situation === 'nothing-to-remark' || (situation === 'nearly-even' && ofAll);
  return meant.length > 0 && plain ? [...meant, ...besides] : [progress, ...meant, ...besides];
}

const ENDINGS: readonly Statement['situation'][] = ['slows-to-the-end', 'broad-last-note'];

const gravityOf = ({ gravity = 1 }: Found): number => gravity;

function byGravity(found: readonly Found[]): readonly Found[] {
  const rank = ({ statement }: Found): number => RULES[statement.situation].rank;
  return [...found].sort((a, b) => rank(a) - rank(b) || gravityOf(b) - gravityOf(a));
}

const SYMPTOMS: readonly Statement['situation'][] = ['uneven', 'uneven-in-pairs', 'late-note'];

/**
 * What follows from a fault is not another one: a note that is late because a wrong one came before it, an unevenness that is
 * gone where the steps named already are left out, one late crossing of notes that are uneven without it.
 */
function withoutSymptoms(scene: Scene, found: readonly Found[]): readonly Found[] {
  const causes = found.filter(({ statement }) => !SYMPTOMS.includes(statement.situation));
  const touched = new Set(
    causes.flatMap(({ statement }) => statement.steps.flatMap((step) => [step, step + 1])),
  );
  const late = found.filter(
    ({ statement }) =>
      statement.situation === 'late-note' && !statement.steps.some((step) => touched.has(step)),
  );
  const lateSteps = new Set(late.flatMap(({ statement }) => statement.steps));
  const rest = shapeOf(scene).body.filter(({ step }) => !touched.has(step) && !lateSteps.has(step));
  const left = withoutHandsApart(scene, found, evennessDriftRemovedPercent(rest));
  const still = surelyOver(left, scene.criteria.unevenPercent, scene.criteria);
  const uneven = found.some(({ statement }) => statement.situation === 'uneven') && still;
  const apartForNow = found.some(({ statement }) => statement.situation === 'hands-apart-for-now');
  const nothingElse = touched.size + lateSteps.size === 0 && !handsApart(found);
  const unexplained = !apartForNow && (nothingElse || still);
  return found.filter((one) => {
    const { situation } = one.statement;
    if (situation === 'late-note') return late.includes(one);
    if (isLoneCrossing(one)) return !uneven && !handsApart(found);
    return unexplained || !SYMPTOMS.includes(situation);
  });
}

/** Among notes that stray all over, or hands that part anywhere, one late note shows nothing about its crossing. */
const isLoneCrossing = ({ statement }: Found): boolean =>
  statement.situation === 'crossing-late' && statement.crossings.length === 1;

const handsApart = (found: readonly Found[]): boolean =>
  found.some(({ statement }) => statement.situation === 'hands-apart');

/**
 * Hands that scatter make the steps scatter, which lie at the mean of both: by half of their difference, and intervals by √2 as much.
 * That is one fault and not two.
 */
function withoutHandsApart({ measured }: Scene, found: readonly Found[], figure: Figure): Figure {
  const apart = measured.measures.togetherness?.apartSdMs;
  const ioiMs = mean(measured.unbroken.map((interval) => interval.ioiMs));
  if (!handsApart(found) || apart === undefined || !isMeasured(apart) || !isMeasured(figure)) return figure;
  const ofHands = (100 * apart.value) / Math.SQRT2 / (ioiMs ?? Infinity);
  return { ...figure, value: Math.sqrt(Math.max(0, figure.value ** 2 - ofHands ** 2)) };
}

/** Two faults within so much of each other weigh the same. */
const EQUAL = 0.9;

/** Both of two are named; of more the gravest, and a second that weighs the same. The rest is counted, and listed. */
function howManyNamed(found: readonly Found[]): 1 | 2 {
  const faults = found.filter(({ statement }) => statement.faults > 0);
  const [first, second] = faults;
  if (isKind(found[0]!, 'sound') || isKind(found[0]!, 'exercise')) return first === undefined ? 1 : 2;
  if (isKind(found[0]!, 'practice'))
    return first !== undefined || (found[1] !== undefined && tellsMore(found[1])) ? 2 : 1;
  if (first === undefined) return found[1] !== undefined && isKind(found[1], 'meant') ? 2 : 1;
  if (second === undefined) return 1;
  const sameRank = RULES[first.statement.situation].rank === RULES[second.statement.situation].rank;
  return faults.length === 2 || (sameRank && gravityOf(second) >= EQUAL * gravityOf(first)) ? 2 : 1;
}

/** Beside "every note right": how far the exercise is, or what may have been meant. */
const tellsMore = (found: Found): boolean =>
  isKind(found, 'meant') || (isKind(found, 'progress') && found.statement.situation !== 'nothing-to-remark');

const isKind = ({ statement }: Found, kind: string): boolean => RULES[statement.situation].kind === kind;

/** Something right is named first: every note, or how many of them; nothing that the sentence says anyhow. */
function openingOf(scene: Scene, { statement }: Found): Said['opening'] {
  const { kind } = RULES[statement.situation];
  if (blamesNotes(statement.situation)) return 'some-notes';
  if (statement.situation === 'broken-off') return everyNoteSoFar(scene, statement.steps) ? 'so-far' : 'none';
  const own: readonly Statement['situation'][] = ['nearly-even', 'under-tempo'];
  const named =
    kind === 'fault' ||
    kind === 'meant' ||
    own.includes(statement.situation) ||
    (statement.situation === 'better' && statement.improved.figure !== 'notes');
  if (!named) return 'none';
  if (everyNoteRight(scene)) return 'every-note';
  return noNoteWrong(scene) ? 'every-sure-note' : 'none';
}

const everyNoteSoFar = ({ alignment }: Scene, [last = 0]: readonly number[]): boolean =>
  alignment.matched.every(({ step, verdict }) => step > last || verdict === 'correct');

/** The same trouble as last time, but clearly less of it. */
function improvedTrouble(scene: Scene, { statement }: Found): Improved | null {
  const before = scene.earlier.at(-1)?.words.situation;
  return before === undefined || !sameTrouble(before, statement.situation) ? null : improvement(scene);
}

/** Only where the rest was judged, and nothing else is wrong: no other step came audibly early or late. */
function restIsEven(scene: Scene, statements: readonly Statement[]): boolean {
  const [first] = statements;
  const lateOnly =
    first !== undefined &&
    ['crossing-late', 'crossing-late-one-direction', 'late-note'].includes(first.situation);
  if (!lateOnly || statements.length > 1) return false;
  const { measures, intervals } = scene.measured;
  const rest = evennessDriftRemovedPercent(intervals.filter(({ step }) => !first.steps.includes(step)));
  const even = isMeasured(rest) && rest.value <= scene.criteria.evennessPercent;
  const off = measures.intervals.some(
    ({ step, audible, deviationMs, ioiMs }) =>
      audible &&
      !first.steps.includes(step) &&
      Math.abs(deviationMs) > scene.criteria.crossingShareOfInterval * ioiMs,
  );
  return even && !off;
}
