import type { Words } from '../types.ts';
import { isMeasured } from '../measures/index.ts';
import { improvement, sameTrouble } from './better.ts';
import { CHANGES, SPREAD } from './chords.ts';
import { COURSE } from './course.ts';
import { CROSSING } from './crossing.ts';
import { everyNoteRight } from './faults.ts';
import { PROGRESS } from './progress.ts';
import { HANDS } from './hands.ts';
import type { Scene, Situation, Statement } from './scene.ts';
import { EVENNESS, TEMPO } from './time.ts';
import { USABLE } from './usable.ts';
import { EXTRAS } from './extras.ts';
import { FAULTS, WRONG } from './wrong.ts';

export { sceneFacts } from './scene.ts';
export { WORDINGS } from './wordings.ts';
export type { Scene } from './scene.ts';
export { spellWithOctave } from './spelling.ts';

/** Troubles of time, sound and touch, in their order: what went well may be said before them. */
const PLAYING: readonly Situation[] = [...CROSSING, ...CHANGES, ...EVENNESS, ...HANDS, ...SPREAD, ...TEMPO];

/** The troubles, in the order in which a teacher would speak of them (README.md). */
const TROUBLES: readonly Situation[] = [...COURSE, ...WRONG, ...PLAYING];

/** The whole table; the first row that holds gives the verdict. */
export const SITUATIONS: readonly Situation[] = [...USABLE, ...TROUBLES, ...PROGRESS];

/**
 * A scene → what is said of it. The first situation that holds gives the verdict; the next trouble that holds may add half a
 * sentence; praise is only of what was measured.
 */
export function speak(scene: Scene): Words {
  const spoken = firstOf(SITUATIONS, scene)!;
  const { situation, told } = spoken;
  const second = betterHalf(scene, spoken) ?? (situation.takesSecond ? secondHalf(scene, situation) : null);
  const opening = praiseworthy(situation) ? praise(scene, told.sentence) : '';
  const tail = second === null ? restIsEven(scene, situation, told) : `; ${second.half!}`;
  const verdict = `${opening}${atHead(told.sentence)}${tail}.`;
  return {
    situation: situation.name,
    verdict,
    emphasis: verdict.includes(told.emphasis) ? told.emphasis : atHead(told.emphasis),
    nextStep: told.nextStep,
    steps: [...new Set([...told.steps, ...(second?.steps ?? [])])],
    ...(told.practice && { practice: told.practice }),
  };
}

interface Spoken {
  readonly situation: Situation;
  readonly told: Statement;
}

/** As at the head of a sentence, where a syllable may stand: "mi" → "Mi". */
function atHead(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function firstOf(situations: readonly Situation[], scene: Scene): Spoken | undefined {
  for (const situation of situations) {
    const told = situation.tell(scene);
    if (told !== null) return { situation, told };
  }
  return undefined;
}

/** The same trouble as last time, but clearly less of it: that is what comes second. */
function betterHalf(scene: Scene, { situation, told }: Spoken): Statement | null {
  const before = scene.earlier.at(-1);
  if (before === undefined || !sameTrouble(before.words.situation, situation.name)) return null;
  const half = improvement(scene)?.after(told.sentence);
  return half === undefined ? null : { sentence: half, half, emphasis: '', nextStep: '', steps: [] };
}

/** Each of these speaks once: its first row that holds. */
const GROUPS: readonly (readonly Situation[])[] = [
  COURSE,
  FAULTS,
  ...EXTRAS.map((one) => [one]),
  CROSSING,
  CHANGES,
  EVENNESS,
  HANDS,
  SPREAD,
  TEMPO,
];

/** What else holds: the one other trouble by name, of several how many. */
function secondHalf(scene: Scene, first: Situation): Statement | null {
  const others = GROUPS.filter((group) => !group.includes(first)).flatMap((group) => {
    const told = firstOf(group, scene)?.told;
    return told?.half === undefined ? [] : [told];
  });
  const [other] = others;
  if (other === undefined || others.length === 1) return other ?? null;
  const half = scene.wording.moreThings(others.length);
  return { sentence: half, half, emphasis: '', nextStep: '', steps: others.flatMap(({ steps }) => steps) };
}

/** Troubles of time, sound and touch may be opened with what went well; the other rows speak of the notes themselves. */
function praiseworthy(situation: Situation): boolean {
  return PLAYING.includes(situation) || situation.name === 'nearly-even' || situation.name === 'better';
}

function praise(scene: Scene, sentence: string): string {
  return everyNoteRight(scene) && !sentence.startsWith(scene.wording.everyNote) ? scene.wording.praise : '';
}

/** Only where the rest was judged: no other step of the attempt came audibly early or late. */
function restIsEven(scene: Scene, situation: Situation, told: Statement): string {
  if (!CROSSING.includes(situation)) return '';
  const { measures } = scene.measured;
  const rest = measures.evennessWithoutCrossingsPercent;
  const even = isMeasured(rest) && rest.value <= scene.criteria.evennessPercent;
  const off = measures.intervals.some(
    ({ step, audible, deviationMs, ioiMs }) =>
      audible &&
      !told.steps.includes(step) &&
      Math.abs(deviationMs) > scene.criteria.crossingShareOfInterval * (ioiMs - deviationMs),
  );
  return even && !off ? `; ${scene.wording.restIsEven}` : '';
}
