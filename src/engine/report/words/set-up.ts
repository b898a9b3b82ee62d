import type { Hands, Intention, Rhythm } from '../../exercise/index.ts';
import { stepsForHands } from '../../exercise/index.ts';
import { sameAgain } from './leading-back.ts';
import { wholeOf } from './place.ts';
import type { Advice, AdviceName, Statement } from './said/index.ts';
import type { Found, Practice, Scene } from './scene.ts';

/** What the words of a next step ask for, as an intention: how often in a row, in which rhythms, one after the other, or as chords. */
interface Asked extends Pick<Intention, 'times' | 'blocked' | 'apart'> {
  readonly rhythms?: readonly [Rhythm, ...Rhythm[]];
}

const THREE: Asked = { times: 3 };
const ONCE: Asked = { times: 1 };
/** The same once more, and nothing else about it. */
const AS_BEFORE: Asked = { times: 1 };
const PREPARED: Asked = { times: 3, rhythms: ['prepared-silently'] };
const ASKED: { readonly [Name in AdviceName]?: Asked } = {
  'wait-then-begin': AS_BEFORE,
  'straight-through': THREE,
  'until-right': THREE,
  'one-note-more': { times: 2, rhythms: ['one-note-more', 'even'] },
  'five-times-right': { times: 5 },
  'cadence-alone': THREE,
  'say-the-note': THREE,
  'say-the-signature': THREE,
  'position-as-a-chord': { times: 3, blocked: true },
  'shape-silently': PREPARED,
  'middle-of-the-key': THREE,
  'these-keys-only': THREE,
  'go-on': THREE,
  'cross-early': THREE,
  'one-way-first': THREE,
  'each-hand-alone': { times: 3, apart: true },
  'next-shape': { times: 3, rhythms: ['stop-on-each-step'] },
  'think-of-the-way-down': THREE,
  rhythms: { times: 2, rhythms: ['long-short', 'short-long', 'even'] },
  'slower-with-the-pulse': THREE,
  'listen-to-the-other': THREE,
  'stop-on-each-beat': { times: 3, rhythms: ['stop-on-each-beat'] },
  'fall-as-one': PREPARED,
  'at-the-tempo': ONCE,
  'same-tempo-with-the-pulse': THREE,
  'if-meant': AS_BEFORE,
  'the-same-again': AS_BEFORE,
  'make-it-stay': AS_BEFORE,
  'other-hand': ONCE,
  'hands-together': THREE,
  'faster-or-next-key': ONCE,
};

/** A next step → its set-up, with the intention by which it is judged; undefined: nothing is to be played, or it is not known what. */
export function setUpOf(scene: Scene, found: Found): Practice | undefined {
  return forItsHands(scene, asFound(scene, found));
}

/** Each hand of a passage counts its own steps: for other hands than played, theirs. */
function forItsHands({ exercise: { choice } }: Scene, practice: Practice | undefined): Practice | undefined {
  const { hands, intention } = practice ?? {};
  if (practice === undefined || hands === undefined) return practice;
  const stretch = intention?.stretch && stepsForHands(choice, hands, intention.stretch);
  return {
    ...practice,
    ...stepsForHands(choice, hands, practice),
    ...(intention !== undefined && { intention: { ...intention, ...(stretch && { stretch }) } }),
  };
}

function asFound(scene: Scene, { advice, practice, statement }: Found): Practice | undefined {
  if (practice?.intention !== undefined) return practice;
  const { practised } = scene.exercise;
  // Of practice of which nothing could be told, the same again is the same practice.
  if (practised !== undefined && practice === undefined) return sameAgain(scene, practised);
  const asked = askedBy(advice, statement);
  if (asked === undefined) return practice;
  const own = practice ?? wholeAt(scene, asked);
  if (own === undefined) return undefined;
  const hands = handsFor(advice, scene);
  const set = {
    ...own,
    ...(hands !== undefined && hands !== scene.exercise.choice.hands && { hands }),
  };
  return { ...set, intention: intentionOf(asked, set, scene) };
}

/** The whole as it was played; where nothing else is asked, only at a tempo that somebody aims at: none is set that nobody chose. */
function wholeAt(scene: Scene, asked: Asked): Practice | undefined {
  const { targetBpm } = scene.report;
  if (asked !== AS_BEFORE) return wholeOf(scene, 1);
  return targetBpm === null ? undefined : { ...wholeOf(scene, 1), tempoBpm: targetBpm };
}

function intentionOf(
  { rhythms, times, blocked, apart }: Asked,
  { fromStep, toStep }: Practice,
  scene: Scene,
): Intention {
  const last = scene.exercise.steps.length - 1;
  const [rhythm, ...then] = rhythms ?? (['even'] as const);
  return {
    ...(fromStep < toStep && toStep - fromStep < last && { stretch: { fromStep, toStep } }),
    times,
    rhythm,
    ...(blocked && fromStep < toStep && { blocked }),
    ...(apart && { apart }),
    ...(then.length > 0 && { then }),
  };
}

function askedBy(advice: Advice, statement: Statement): Asked | undefined {
  if (advice.step === 'the-other-rhythm') return { times: 3, rhythms: [advice.rhythm, 'even'] };
  if (advice.step === 'cross-in-rhythm')
    return {
      times: 2,
      rhythms: [advice.rhythm, advice.rhythm === 'long-short' ? 'short-long' : 'long-short', 'even'],
    };
  // If it was meant, it is the same again.
  if (advice.step === 'if-meant' && statement.situation === 'in-a-rhythm')
    return { ...ONCE, rhythms: [statement.rhythm] };
  return ASKED[advice.step];
}

/** Who is to play, where the step says so. */
function handsFor(advice: Advice, { exercise }: Scene): Hands | undefined {
  switch (advice.step) {
    case 'other-hand':
      return advice.hand;
    case 'hands-together':
      return 'together';
    case 'each-hand-alone':
      return exercise.choice.hands === 'together' ? 'left' : undefined;
    default:
      return 'task' in advice ? (advice.task.hands ?? undefined) : undefined;
  }
}
