import { capital } from '../../../../base/text.ts';
import type { NoteNaming } from '../../../../exercise/index.ts';
import { keyName } from '../../../../exercise/index.ts';
import type { Improved, Said } from '../../said/index.ts';
import type { ABOUT_PROGRESS } from '../../rules/progress.ts';
import type { Clauses, Parts } from '../types.ts';
import { isInTime, joined, plain } from '../types.ts';
import { count, figure, some, times, where } from './places.ts';
import type { Notes } from './places.ts';
import { practised } from './practice.ts';

const HANDS = { left: 'linke', right: 'rechte' } as const;

/** "jeder Ton richtig und gleichmäßig" */
const rightAndEven = (allSure: boolean): string =>
  `jeder Ton${allSure ? '' : ', der zu erkennen war,'} richtig und gleichmäßig`;

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
        ? `Unter- und Übersatz kommen jetzt rechtzeitig, vorher ${before} ms zu spät`
        : `Unter- und Übersatz sind besser, ${now} ms zu spät statt ${before}`,
  },
  evenness: {
    digits: 1,
    unit: ' %',
    say: (now, before) => `es ist gleichmäßiger als beim letzten Mal, Schwankung ${now} % statt ${before}`,
  },
  turn: {
    digits: 0,
    unit: ' ms',
    say: (now, before, inTime) =>
      inTime
        ? `der Wendepunkt kommt jetzt rechtzeitig, vorher ${before} ms zu spät`
        : `der Wendepunkt ist besser, ${now} ms zu spät statt ${before}`,
  },
  change: {
    digits: 1,
    unit: '-mal so lang wie die anderen',
    say: (now, before) => `der Wechsel ist besser, ${now}-mal so lang wie die anderen statt ${before}-mal`,
  },
  spread: {
    digits: 0,
    unit: ' ms',
    say: (now, before) => `die Akkorde sind dichter beisammen, ${now} ms statt ${before}`,
  },
  drift: {
    digits: 0,
    unit: ' %',
    say: (now, before) => `das Tempo ist stetiger, ${now} % vom ersten zum letzten Ton statt ${before}`,
  },
};

function better(one: Improved): string {
  if (one.figure === 'notes')
    return `jeder Ton jetzt richtig, beim letzten Mal ${one.before === 1 ? 'war' : 'waren'} es ${some(one.before)} nicht`;
  const { digits, say } = FIGURES[one.figure];
  return say(figure(one.now, digits), figure(one.before, digits), isInTime(one));
}

/** After a sentence on the same trouble: what it says already is not said again. */
export function improvedAfter(one: Improved, sentence: string): string {
  if (one.figure === 'notes') return better(one);
  const { digits, unit } = FIGURES[one.figure];
  const told = (value: number, places = digits): string => figure(value, places) + unit;
  const places = [digits, 0].find((some) => sentence.includes(` ${told(one.now, some)}`));
  return places === undefined
    ? `besser als beim letzten Mal, ${told(one.now)} statt ${told(one.before)}`
    : `besser als beim letzten Mal, vorher ${told(one.before, places)}`;
}

export function opening(how: Said['opening'], { right, of }: Said['notes']): string {
  if (how === 'none') return '';
  if (how === 'every-note') return 'Jeder Ton richtig. ';
  if (how === 'every-sure-note') return 'Jeder Ton, der zu erkennen war, richtig. ';
  if (how === 'so-far') return 'So weit jeder Ton richtig. ';
  return right === of ? `Alle ${of} Töne richtig. ` : `${right} von ${of} Tönen richtig. `;
}

/** All well; and what could not be told. */
export function aboutProgress(
  { name }: Notes,
  naming: NoteNaming,
): Pick<Clauses, keyof typeof ABOUT_PROGRESS> {
  const key = (one: string): string => keyName(one, { language: 'de', naming });
  return {
    'not-sure': ({ notes }) => {
      const what = notes.slice(0, 2).map(({ note, place }) => joined('das', name(note), where(place)));
      const asked =
        notes.length <= 2
          ? `${what.length === 1 ? 'Ist' : 'Sind'} ${what.join(' und ')} erklungen?`
          : `Sind ${count(notes.length)} Töne erklungen?`;
      return plain(`nicht sicher: ${asked}`, 'nicht sicher');
    },
    practised,
    'under-tempo': ({ playedBpm, aimBpm }) =>
      plain(`gleichmäßig, bei ♩ = ${playedBpm}; das Ziel ist ${aimBpm}`, `das Ziel ist ${aimBpm}`),
    'key-ready': ({ key: which, atBpm, inARow, allSure }) => {
      const ready = `${which === null ? 'Die Stelle' : key(which)} sitzt${atBpm === null ? '' : ` bei ♩ = ${atBpm}`}`;
      return plain(`${ready}: ${times(inARow)} hintereinander ${rightAndEven(allSure)}`, ready);
    },
    'hand-ready': ({ hand, inARow, allSure }) => {
      const ready = hand === null ? 'Diese Hand sitzt' : `Die ${HANDS[hand]} Hand sitzt`;
      return plain(`${times(inARow)} hintereinander ${rightAndEven(allSure)}: ${ready}`, ready);
    },
    'often-enough': ({ inARow, allSure }) =>
      plain(`${times(inARow)} hintereinander ${rightAndEven(allSure)}`, ''),
    better: ({ improved }) => plain(better(improved), capital(better(improved).split(', ')[0]!)),
    'twice-at-the-criterion': ({ allSure }) => ({
      sentence: `${rightAndEven(allSure)}, zweimal hintereinander. Noch einmal so`,
      half: rightAndEven(allSure),
      emphasis: 'Noch einmal so',
    }),
    'at-the-criterion': ({ allSure }) => plain(rightAndEven(allSure), ''),
    'nearly-even': ({ percent, boundPercent }) =>
      plain(
        `noch nicht ganz gleichmäßig: Die Zeit von Ton zu Ton schwankt um ${figure(percent, 1)} %; bei diesem Tempo gilt bis ${figure(boundPercent, 1)} % als gleichmäßig`,
        'noch nicht ganz gleichmäßig',
      ),
    'nothing-to-remark': ({ right, of, unsure }) =>
      plain(
        right === of
          ? 'jeder Ton richtig'
          : `${right} von ${of} Tönen richtig${unsure === 0 ? '' : `; ${some(unsure)} ${unsure === 1 ? 'war' : 'waren'} nicht zu erkennen`}`,
        '',
      ),
  };
}

export function partsAboutProgress({ name, ofHand }: Notes): Parts {
  return {
    'not-sure': ({ notes }) =>
      notes.map(({ step, note, place, hand }) => ({
        steps: [step],
        text: `${joined('nicht sicher: Ist das', name(note), where(place), ofHand(hand))} erklungen?`,
      })),
  };
}
