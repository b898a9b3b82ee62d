import type { Wording } from '../english/index.ts';
import { capital, count, some, times } from './places.ts';

type Rows =
  | 'keyStands'
  | 'handReady'
  | 'twice'
  | 'once'
  | 'nearlyEven'
  | 'nothingToRemark'
  | 'better'
  | 'bettered'
  | 'everyNoteNow'
  | 'betterThanLast'
  | 'praise'
  | 'everyNote'
  | 'restIsEven'
  | 'moreThings';

const HANDS = { left: 'linke', right: 'rechte' } as const;

/** "jeder Ton richtig und alles gleichmäßig" */
const rightAndEven = (allSure: boolean): string =>
  `jeder Ton${allSure ? '' : ', der zu erkennen war,'} richtig und alles gleichmäßig`;

export const PROGRESS: Pick<Wording, Rows> = {
  keyStands: ({ key, nextKey, atBpm, inARow, allSure }) => ({
    sentence: `Die Tonart ${key} sitzt${atBpm === null ? '' : ` bei ${atBpm}`}: ${times(inARow)} hintereinander ${rightAndEven(allSure)}`,
    emphasis: `Die Tonart ${key} sitzt`,
    nextStep: `6 bis 8 Schläge schneller, oder die nächste Tonart im Quintenzirkel, ${nextKey}.`,
  }),
  handReady: ({ hand, other, inARow, allSure, togetherBpm }) => {
    const ready = `Die ${HANDS[hand]} Hand ist so weit`;
    return {
      sentence: `${capital(times(inARow))} hintereinander ${rightAndEven(allSure)}: ${ready}`,
      emphasis: ready,
      nextStep:
        togetherBpm === null
          ? `die ${HANDS[other]} Hand allein, auf dieselbe Art; dann beide Hände zusammen.`
          : `beide Hände zusammen, bei ${togetherBpm}; die ${HANDS[other]} Hand ist auch so weit.`,
    };
  },
  twice: (allSure) => ({
    sentence: `${capital(rightAndEven(allSure))}, zweimal hintereinander. Noch einmal so`,
    emphasis: 'Noch einmal so',
    nextStep: 'dasselbe noch einmal.',
  }),
  once: (allSure, inARow) => ({
    sentence: capital(rightAndEven(allSure)),
    emphasis: '',
    nextStep: `dasselbe noch einmal; ${times(inARow)} hintereinander, dann ist es so weit.`,
  }),
  nearlyEven: (percent, boundPercent) => ({
    sentence:
      `Noch nicht ganz gleichmäßig: Die Zeit von Ton zu Ton schwankt um ${percent.toFixed(1).replace('.', ',')} %; ` +
      `bei diesem Tempo gilt bis ${boundPercent.toFixed(1).replace('.', ',')} % als gleichmäßig`,
    emphasis: 'Noch nicht ganz gleichmäßig',
    nextStep: 'dasselbe Tempo, mit dem Puls.',
  }),
  nothingToRemark: (right, of, unsure, everyNote) => ({
    sentence: everyNote
      ? 'Jeder Ton richtig'
      : `${right} von ${of} Tönen richtig${
          unsure === 0 ? '' : `; ${some(unsure)} ${unsure === 1 ? 'war' : 'waren'} nicht zu erkennen`
        }`,
    emphasis: '',
    nextStep: 'dasselbe noch einmal.',
  }),
  better: (clause) => ({
    sentence: capital(clause),
    emphasis: capital(clause.split(', ')[0]!),
    nextStep: 'dasselbe noch einmal, damit es bleibt.',
  }),
  bettered: {
    crossing: {
      unit: ' ms',
      say: (now, before, inTime) =>
        inTime
          ? `der Übergang kommt jetzt rechtzeitig, vorher kam er ${before} ms zu spät`
          : `der Übergang ist besser, ${now} ms zu spät statt ${before}`,
    },
    evenness: {
      unit: ' %',
      say: (now, before) => `es ist gleichmäßiger als beim letzten Mal, ${now} % statt ${before}`,
    },
    turn: {
      unit: ' ms',
      say: (now, before, inTime) =>
        inTime
          ? `die Umkehr kommt jetzt rechtzeitig, vorher kam sie ${before} ms zu spät`
          : `die Umkehr ist besser, ${now} ms zu spät statt ${before}`,
    },
    change: {
      unit: '-mal so lang wie die anderen',
      say: (now, before) => `der Wechsel ist besser, ${now}-mal so lang wie die anderen statt ${before}-mal`,
    },
    spread: {
      unit: ' ms',
      say: (now, before) => `die Akkorde sind dichter beisammen, ${now} ms statt ${before}`,
    },
    drift: {
      unit: ' %',
      say: (now, before) => `es ist stetiger, ${now} % vom ersten zum letzten Ton statt ${before}`,
    },
  },
  everyNoteNow: (before) =>
    `jeder Ton jetzt richtig, beim letzten Mal ${before === 1 ? 'war' : 'waren'} es ${some(before)} nicht`,
  betterThanLast: (now, before) =>
    now === null
      ? `besser als beim letzten Mal, vorher ${before}`
      : `besser als beim letzten Mal, ${now} statt ${before}`,
  praise: 'Jeder Ton richtig. ',
  everyNote: 'Jeder Ton',
  restIsEven: 'der Rest ist gleichmäßig',
  moreThings: (things) => `dazu ${count(things)} weitere Dinge`,
};
