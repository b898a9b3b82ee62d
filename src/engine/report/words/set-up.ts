import type { Intention, Rhythm } from '../../exercise/index.ts';
import type { Advice, AdviceName } from './said/index.ts';
import type { Practice } from './scene.ts';

/** What the words of a next step ask for, as an intention: how often in a row, and in which rhythms, one after the other. */
interface Asked {
  readonly times: number;
  readonly rhythms?: readonly [Rhythm, ...Rhythm[]];
}

const THREE: Asked = { times: 3 };
const ASKED: { readonly [Name in AdviceName]?: Asked } = {
  'straight-through': THREE,
  'until-right': THREE,
  'five-times-right': { times: 5 },
  'say-the-note': THREE,
  'middle-of-the-key': THREE,
  'these-keys-only': THREE,
  'go-on': THREE,
  'cross-early': THREE,
  'one-way-first': THREE,
  'next-shape': { times: 3, rhythms: ['stop-on-each-step'] },
  'think-of-the-way-down': THREE,
  rhythms: { times: 2, rhythms: ['long-short', 'short-long', 'even'] },
  'slower-with-the-pulse': THREE,
  'listen-to-the-other': THREE,
  'stop-on-each-beat': { times: 3, rhythms: ['stop-on-each-beat'] },
};

/** A next step and its stretch → the same with the intention, where what it asks for can be judged. */
export function withIntention(advice: Advice, practice: Practice): Practice {
  const asked = askedBy(advice);
  if (asked === undefined || practice.intention !== undefined) return practice;
  const { fromStep, toStep } = practice;
  const [rhythm, ...then] = asked.rhythms ?? (['even'] as const);
  const intention: Intention = {
    ...(fromStep < toStep && { stretch: { fromStep, toStep } }),
    times: asked.times,
    rhythm,
    ...(then.length > 0 && { then }),
  };
  return { ...practice, intention };
}

function askedBy(advice: Advice): Asked | undefined {
  if (advice.step === 'the-other-rhythm') return { times: 3, rhythms: [advice.rhythm, 'even'] };
  if (advice.step === 'cross-in-rhythm')
    return {
      times: 2,
      rhythms: [advice.rhythm, advice.rhythm === 'long-short' ? 'short-long' : 'long-short', 'even'],
    };
  return ASKED[advice.step];
}
