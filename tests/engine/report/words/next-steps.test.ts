import { isDeepStrictEqual } from 'node:util';
import { describe, expect, it } from 'vitest';
import type { ExerciseChoice, Intention } from '../../../../src/engine/exercise/index.ts';
import { buildExercise, isCadence, isWhole } from '../../../../src/engine/exercise/index.ts';
import { RULES, tellWords } from '../../../../src/engine/report/words/index.ts';
import type { Said, SituationName } from '../../../../src/engine/report/words/index.ts';
import { CAUSES, everyNextStep, oneOfEach } from './every-step.ts';
import type { Told } from './every-step.ts';
import { tell } from './scenes.ts';

/*
 * Every next step that the program can give, played by every cause in every form and hand: each can be played as it stands. What is
 * asked here is common practice in teaching, no source.
 */

const TOLD: readonly Told[] = oneOfEach().flatMap((choice, at) => [
  ...everyNextStep([choice], [[33, 80, 132][at % 3]!]),
]);

type Step = Said['advice']['step'];

const saidIn = ({ report }: Told): Said => report.words.said!;
const stepIn = (told: Told): Step => saidIn(told).advice.step;
const english = onceEach(({ report }: Told) =>
  tellWords(report.words, { language: 'en', naming: 'letters' }),
);
const german = onceEach(({ report }: Told) => tellWords(report.words, { language: 'de', naming: 'german' }));
const stepsOf = onceEach((choice: ExerciseChoice) => buildExercise(choice).steps);
const which = (one: Told): string => `${one.cause} | ${english(one).verdict} | ${english(one).nextStep}`;
const failing = (all: readonly Told[], holds: (one: Told) => boolean): readonly string[] =>
  all.filter((one) => !holds(one)).map(which);

/** Many questions are asked of each. */
function onceEach<One, Answer>(ask: (one: One) => Answer): (one: One) => Answer {
  const answers = new Map<One, Answer>();
  return (one) => {
    if (!answers.has(one)) answers.set(one, ask(one));
    return answers.get(one)!;
  };
}

/** Of these nothing is to be played that needs a tempo or a count: to the sound, to the choice, or a rest. */
const NOT_PLAYED: readonly Step[] = [
  'record-again',
  'check-the-choice',
  'switch-or-again',
  'go-on-or-the-other',
  'wait-then-begin',
  'on-another-day',
  'rest',
];
/** Of these it is the whole again, at the tempo just played. */
const THE_SAME: readonly Step[] = ['the-same-again', 'make-it-stay', 'if-meant'];
const played = TOLD.filter((one) => !NOT_PLAYED.includes(stepIn(one)));
const stretches = played.filter(({ report }) => report.words.practice !== undefined);

const PAIRS: Partial<Intention> = { rhythm: 'long-short', then: ['short-long', 'even'] };

/** Which steps fit a cause. */
const FITTING: { readonly [Name in SituationName]?: readonly Step[] } = {
  'same-place-again': ['five-times-right', 'one-note-more', 'shape-silently'],
  'leading-note': ['say-the-note', 'cadence-alone', 'one-note-more', 'shape-silently'],
  signature: ['say-the-signature', 'say-the-note'],
  'landed-off': ['position-as-a-chord', 'one-note-more'],
  'inner-note': ['shape-silently', 'fall-as-one'],
  'wrong-notes': ['until-right', 'one-note-more', 'shape-silently'],
  'missed-notes': ['until-right', 'one-note-more', 'shape-silently'],
  slips: ['middle-of-the-key', 'these-keys-only', 'one-note-more', 'shape-silently'],
  repeats: ['go-on', 'slower-with-the-pulse'],
  stopped: ['straight-through', 'one-note-more'],
  restarted: ['straight-through', 'one-note-more'],
  'broken-off': ['straight-through', 'one-note-more'],
  'hands-apart-for-now': ['each-hand-alone', 'stop-on-each-beat'],
  'crossing-late-both-ways': ['one-way-first', 'cross-in-rhythm'],
  'crossing-late-one-direction': ['cross-early', 'cross-in-rhythm', 'position-as-a-chord'],
  'crossing-late': ['cross-early', 'cross-in-rhythm', 'position-as-a-chord'],
  'late-note': ['slower-with-the-pulse', 'rhythms'],
  'change-hesitates': ['next-shape', 'shape-silently'],
  'late-at-the-turn': ['think-of-the-way-down', 'slower-with-the-pulse'],
  'uneven-in-pairs': ['the-other-rhythm', 'slower-with-the-pulse'],
  uneven: ['slower-with-the-pulse', 'rhythms', 'one-note-more'],
  drift: ['slower-with-the-pulse', 'one-note-more'],
  'one-hand-leads': ['listen-to-the-other', 'stop-on-each-beat'],
  'hands-apart': ['stop-on-each-beat', 'each-hand-alone'],
  'chords-spread': ['fall-as-one', 'shape-silently'],
  'inner-notes-soft': ['shape-silently', 'fall-as-one'],
  'nearly-even': ['same-tempo-with-the-pulse', 'rhythms'],
};

/** What is practised here is the place itself; with the others it is a way, a hand or a part that strays most. */
const AT_THE_PLACE: readonly SituationName[] = [
  'same-place-again',
  'leading-note',
  'signature',
  'landed-off',
  'inner-note',
  'wrong-notes',
  'missed-notes',
  'slips',
  'repeats',
  'stopped',
  'restarted',
  'crossing-late',
  'crossing-late-one-direction',
  'late-note',
  'change-hesitates',
  'late-at-the-turn',
];

describe('every next step can be played as it stands', () => {
  it('comes from every cause in every form', () => {
    expect(TOLD.length).toBeGreaterThan(1000);
    const situations = new Set(TOLD.map((one) => saidIn(one).statements[0]!.situation));
    expect(situations.size).toBeGreaterThan(30);
  });

  it('a stretch is read at a glance: two bars, or three changes, and four notes, a hand position or two chords at least', () => {
    expect(
      failing(stretches, ({ choice, report: { words } }) => {
        const { fromStep, toStep } = words.practice!;
        const steps = stepsOf(choice);
        if (fromStep === 0 && toStep === steps.length - 1) return true;
        // Of a cadence the left hand alone has one note to each chord.
        const chords =
          isCadence(choice.form) || steps[0]!.notes.length > (choice.hands === 'together' ? 2 : 1);
        const changes = toStep - fromStep;
        if (chords) return changes >= 1 && changes <= 3;
        const least = words.said!.advice.step === 'position-as-a-chord' ? 2 : 3;
        return changes >= least && steps[toStep]!.beat - steps[fromStep]!.beat < 8;
      }),
    ).toEqual([]);
  });

  it('the whole is asked for only where it is short, or nothing in it is to be mended', () => {
    expect(
      failing(stretches, ({ choice, report: { words } }) => {
        const { fromStep, toStep } = words.practice!;
        const steps = stepsOf(choice);
        const whole = fromStep === 0 && toStep === steps.length - 1;
        return !whole || steps.at(-1)!.beat < 8 || words.said!.statements[0]!.faults === 0;
      }),
    ).toEqual([]);
  });

  it('holds what is to be mended', () => {
    expect(
      failing(stretches, ({ report: { words } }) => {
        const [{ situation, steps }] = words.said!.statements as [Said['statements'][number]];
        const { fromStep, toStep } = words.practice!;
        if (!AT_THE_PLACE.includes(situation) || steps.length === 0) return true;
        // After a stop it is the way on that is practised.
        const to = situation === 'stopped' ? 1 : 0;
        return steps.some((step) => step >= fromStep && step + to <= toStep);
      }),
    ).toEqual([]);
  });

  it('has a tempo of 40 or more with its note value, in both languages', () => {
    const VALUE = {
      en: /♩\.? = (\d+), (one|two|three|four) (note|chord)s? (a beat|every two beats)/,
      de: /♩\.? = (\d+), (ein|zwei|drei|vier) (Ton|Töne|Akkord|Akkorde) auf (jeden Schlag|zwei Schläge)/,
    };
    const told = played.filter((one) => !THE_SAME.includes(stepIn(one)));
    expect(failing(told, (one) => Number(VALUE.en.exec(english(one).nextStep)?.[1]) >= 40)).toEqual([]);
    expect(failing(told, (one) => Number(VALUE.de.exec(german(one).nextStep)?.[1]) >= 40)).toEqual([]);
  });

  it('says how often, and what counts as done', () => {
    expect(
      failing(played, (one) =>
        /(until .*(twice|three times|five times|three) in a row|each length twice without a slip|three times in a row|in a row, on two days, make it ready|once more, from the beginning)/.test(
          english(one).nextStep,
        ),
      ),
    ).toEqual([]);
    expect(
      failing(played, (one) =>
        /(zweimal|dreimal|fünfmal|drei) hintereinander|jede Länge zweimal ohne Fehler|noch einmal von Anfang an/.test(
          german(one).nextStep,
        ),
      ),
    ).toEqual([]);
  });

  it('is set up as it is said: so often in a row, in that rhythm and what follows it, as chords, or each hand by itself', () => {
    const OFTEN = { twice: 2, three: 3, five: 5 } as const;
    const WAYS: readonly (readonly [said: RegExp, how: Partial<Intention>])[] = [
      [/two (notes|chords), then three/, { rhythm: 'one-note-more', then: ['even'] }],
      [/pressed silently first|all keys touched first/, { rhythm: 'prepared-silently' }],
      [/hold the chord, look at the next/, { rhythm: 'stop-on-each-step' }],
      [/stop on each beat/, { rhythm: 'stop-on-each-beat' }],
      [/first long–short, then (short–long|the other way)/, PAIRS],
      [/the other way round, short–long, then even/, { rhythm: 'short-long', then: ['even'] }],
      [/the other way round, long–short, then even/, { rhythm: 'long-short', then: ['even'] }],
      [/strike .* as one chord, lift/, { rhythm: 'even', blocked: true }],
      [/^each hand alone/, { rhythm: 'even', apart: true }],
    ];
    const setUp = stretches.filter((one) => {
      const { intention } = one.report.words.practice!;
      // The whole, once, is judged like any attempt.
      return intention !== undefined && !isWhole(intention) && !THE_SAME.includes(stepIn(one));
    });
    expect(setUp.length).toBeGreaterThan(500);
    const said = (one: Told): Omit<Intention, 'stretch'> => {
      const { nextStep } = english(one);
      const often = /(twice|three|five)( times)? in a row|each length (twice)/.exec(nextStep);
      const [, how] = WAYS.find(([words]) => words.test(nextStep)) ?? [null, { rhythm: 'even' as const }];
      return { rhythm: 'even', ...how, times: OFTEN[(often?.[1] ?? often?.[3]) as keyof typeof OFTEN] };
    };
    expect(
      failing(setUp, (one) => {
        const { stretch: _, ...intention } = one.report.words.practice!.intention!;
        return isDeepStrictEqual(intention, said(one));
      }),
    ).toEqual([]);
  });

  it('is said shortly, of chords as chords and of notes as notes', () => {
    expect(failing(TOLD, (one) => english(one).nextStep.length <= 200)).toEqual([]);
    expect(failing(TOLD, (one) => german(one).nextStep.length <= 230)).toEqual([]);
    const chords = TOLD.filter(({ choice: { form } }) => form === 'triads' || form === 'progression');
    expect(
      failing(chords, (one) => !/two notes|Töne auf|one note a beat/.test(english(one).nextStep)),
    ).toEqual([]);
  });

  it('names no finger: which one played is the book’s, and not heard', () => {
    const fingers = /thumb|finger \d|(second|third|fourth|little) finger|Daumen|\d\. Finger/;
    expect(failing(TOLD, (one) => !fingers.test(english(one).nextStep + german(one).nextStep))).toEqual([]);
  });

  it('strains nothing: the key behind is let go, and no key is held on, pressed hard or struck hard', () => {
    const strain = /hold on|press(ed)? hard|harder|louder|stretch|force|festhalten|fester|kräftig|streck/i;
    expect(failing(TOLD, (one) => !strain.test(english(one).nextStep + german(one).nextStep))).toEqual([]);
    const crossings = TOLD.filter((one) => stepIn(one) === 'cross-early');
    expect(crossings.length).toBeGreaterThan(20);
    for (const one of crossings) expect(english(one).nextStep).toContain('let go of the key behind');
  });

  it('fits its cause', () => {
    expect(
      failing(TOLD, (one) => {
        const fitting = FITTING[saidIn(one).statements[0]!.situation];
        return fitting === undefined || fitting.includes(stepIn(one));
      }),
    ).toEqual([]);
  });

  it('is told with what was right, where notes were right', () => {
    const PRAISE = /^(Every note|All \d+ notes|[1-9]\d* of \d+ notes)/;
    const blamed = TOLD.filter((one) => {
      const { kind } = RULES[saidIn(one).statements[0]!.situation];
      return kind === 'fault' && saidIn(one).statements[0]!.situation !== 'started-late';
    });
    expect(failing(blamed, (one) => PRAISE.test(english(one).verdict))).toEqual([]);
  });
});

describe('variety', () => {
  const A: ExerciseChoice = { key: 'A major', form: 'scale', hands: 'together', octaves: 2 };
  const CHORDS: ExerciseChoice = { key: 'A major', form: 'triads', hands: 'together', octaves: 1 };
  const rows = [A, CHORDS].flatMap((choice) =>
    CAUSES.map((cause) => [choice.form, cause.name, choice, cause] as const),
  );

  it.each(rows)('%s, %s: no three times running the same', (_form, _name, choice, { playing, options }) => {
    const one = playing(buildExercise(choice));
    if (one === null) return;
    const reports = [tell({ choice, ...one }, options)];
    if (FITTING[reports[0]!.words.situation as SituationName] === undefined) return;
    for (let attempt = 1; attempt < 4; attempt++)
      reports.push(tell({ choice, ...one }, { ...options, earlier: [...reports] }));
    const steps = reports.map(({ words }) => words.said!.advice.step);
    const thrice = steps.filter((step, at) => at >= 2 && step === steps[at - 1] && step === steps[at - 2]);
    expect(thrice).toEqual([]);
  });
});
