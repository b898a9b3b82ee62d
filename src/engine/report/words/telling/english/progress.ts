import { capital } from '../../../../base/text.ts';
import type { NoteNaming } from '../../../../exercise/index.ts';
import { keyName } from '../../../../exercise/index.ts';
import type { Improved, Said } from '../../said/index.ts';
import type { ABOUT_PROGRESS } from '../../rules/progress.ts';
import type { Clauses, Parts } from '../types.ts';
import { isInTime, joined, plain } from '../types.ts';
import { count, where } from './places.ts';
import type { Notes } from './places.ts';
import { practised } from './practice.ts';

/** "every note right and"; where some notes were left unsure, "every note that could be told is right and". */
const rightAnd = (allSure: boolean, comma = ''): string =>
  `every note${allSure ? '' : ' that could be told is'} right${comma} and`;

type Figured = Exclude<Improved, { readonly figure: 'notes' }>;
const FIGURES: Readonly<
  Record<
    Figured['figure'],
    {
      readonly digits: number;
      readonly unit: string;
      readonly say: (now: string, before: string, inTime: boolean) => string;
    }
  >
> = {
  crossing: {
    digits: 0,
    unit: ' ms',
    say: (now, before, inTime) =>
      inTime
        ? `the crossing is in time now; it was ${before} ms late`
        : `the crossing is better, ${now} ms late where it was ${before}`,
  },
  evenness: {
    digits: 1,
    unit: ' %',
    say: (now, before) => `it is more even than last time, variation ${now} % where it was ${before}`,
  },
  turn: {
    digits: 0,
    unit: ' ms',
    say: (now, before, inTime) =>
      inTime
        ? `the turn is in time now; it was ${before} ms late`
        : `the turn is better, ${now} ms late where it was ${before}`,
  },
  change: {
    digits: 1,
    unit: ' times the others',
    say: (now, before) => `the change is better, ${now} times the others where it was ${before}`,
  },
  spread: {
    digits: 0,
    unit: ' ms',
    say: (now, before) => `the chords are closer, ${now} ms apart where they were ${before}`,
  },
  drift: {
    digits: 0,
    unit: ' %',
    say: (now, before) => `it is steadier, ${now} % from first to last where it was ${before}`,
  },
};

function better(one: Improved): string {
  if (one.figure === 'notes')
    return `every note right now; last time ${count(one.before)} ${one.before === 1 ? 'was' : 'were'} not`;
  const { digits, say } = FIGURES[one.figure];
  return say(one.now.toFixed(digits), one.before.toFixed(digits), isInTime(one));
}

/** After a sentence on the same trouble: what it says already is not said again. */
export function improvedAfter(one: Improved, sentence: string): string {
  if (one.figure === 'notes') return better(one);
  const { digits, unit } = FIGURES[one.figure];
  const told = (value: number, places = digits): string => value.toFixed(places) + unit;
  const places = [digits, 0].find((some) => sentence.includes(` ${told(one.now, some)}`));
  return places === undefined
    ? `better than last time, ${told(one.now)} where it was ${told(one.before)}`
    : `better than last time, when it was ${told(one.before, places)}`;
}

export function opening(how: Said['opening'], { right, of }: Said['notes']): string {
  if (how === 'none') return '';
  if (how === 'every-note') return 'Every note right. ';
  if (how === 'every-sure-note') return 'Every note that could be told is right. ';
  if (how === 'so-far') return 'Every note so far right. ';
  return right === of ? `All ${of} notes right. ` : `${right} of ${of} notes right. `;
}

/** All well; and what could not be told. */
export function aboutProgress(
  { name }: Notes,
  naming: NoteNaming,
): Pick<Clauses, keyof typeof ABOUT_PROGRESS> {
  const key = (one: string): string => keyName(one, { language: 'en', naming });
  return {
    'not-sure': ({ notes }) => {
      const what = notes.slice(0, 2).map(({ note, place }) => joined('the', name(note), where(place)));
      const sentence =
        notes.length <= 2
          ? `not sure: ${what.length === 1 ? 'was' : 'were'} ${what.join(' and ')} struck?`
          : `not sure of ${count(notes.length)} notes: were they struck?`;
      return plain(sentence, 'not sure');
    },
    practised,
    'under-tempo': ({ playedBpm, aimBpm }) =>
      plain(`even, at ♩ = ${playedBpm}; the aim is ${aimBpm}`, `the aim is ${aimBpm}`),
    'key-ready': ({ key: which, atBpm, inARow, allSure }) => {
      const ready = `${which === null ? 'the passage' : key(which)} is ready${atBpm === null ? '' : ` at ♩ = ${atBpm}`}`;
      return plain(`${ready}: ${count(inARow)} in a row, ${rightAnd(allSure)} even`, ready);
    },
    'hand-ready': ({ hand, inARow, allSure }) => {
      const ready = hand === null ? 'this hand is ready' : `the ${hand} hand is ready`;
      return plain(`${count(inARow)} in a row, ${rightAnd(allSure)} even: ${ready}`, ready);
    },
    'often-enough': ({ inARow, allSure }) =>
      plain(`${count(inARow)} in a row, ${rightAnd(allSure)} even`, ''),
    better: ({ improved }) => plain(better(improved), capital(better(improved).split(/[,;] /)[0]!)),
    'twice-at-the-criterion': ({ allSure }) => ({
      sentence: `${rightAnd(allSure, ',')} even, twice in a row. Once more like that`,
      half: `${rightAnd(allSure, ',')} even`,
      emphasis: 'Once more like that',
    }),
    'at-the-criterion': ({ allSure }) => plain(`${rightAnd(allSure, ',')} even`, ''),
    'nearly-even': ({ percent, boundPercent }) =>
      plain(
        `not yet quite even: the time from note to note varies by ${percent.toFixed(1)} %; at this tempo up to ${boundPercent.toFixed(1)} % counts as even`,
        'not yet quite even',
      ),
    'nothing-to-remark': ({ right, of, unsure }) =>
      plain(
        right === of
          ? 'every note right'
          : `${right} of ${of} notes right${unsure === 0 ? '' : `; ${count(unsure)} could not be told`}`,
        '',
      ),
  };
}

export function partsAboutProgress({ name }: Notes): Parts {
  return {
    'not-sure': ({ notes }) =>
      notes.map(({ step, note, place, hand }) => ({
        steps: [step],
        text: `${joined('not sure: was the', name(note), where(place), hand === null ? '' : `(${hand} hand)`)} struck?`,
      })),
  };
}
