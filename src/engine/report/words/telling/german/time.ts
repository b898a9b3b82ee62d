import { capital } from '../../../../base/text.ts';
import type { Saying } from '../../said/index.ts';
import type { ABOUT_TIME } from '../../rules/time.ts';
import type { Clauses, Parts } from '../types.ts';
import { joined, plain, twoAlike } from '../types.ts';
import { chordAfter, count, figure, movement, WAYS } from './places.ts';
import type { Notes } from './places.ts';
import { RHYTHMS } from './practice.ts';

const LOUDER = {
  louder: 'du wirst vom Anfang zum Ende lauter',
  softer: 'du wirst vom Anfang zum Ende leiser',
  'to-the-turn': 'du wirst bis zum Wendepunkt lauter und danach wieder leiser',
  'from-the-turn': 'du wirst bis zum Wendepunkt leiser und danach wieder lauter',
} as const;
const NTH: readonly string[] = ['', 'jeder', 'jeder zweite', 'jeder dritte', 'jeder vierte'];
const VOICES = { lowest: 'der tiefste Ton', inner: 'die Mittelstimme', highest: 'der höchste Ton' } as const;
const HANDS = { left: 'linke', right: 'rechte' } as const;

function apart(reason: Saying<'hands-apart-for-now'>['reason']): string {
  switch (reason.kind) {
    case 'crossings':
      return 'Unter- und Übersätze kommen in beiden Richtungen zu spät';
    case 'uneven':
      return `zusammen schwankt die Zeit um ${reason.together} %, jede Hand allein höchstens um ${reason.alone} %`;
    case 'delay':
      return `zusammen kommen Unter- und Übersätze ${reason.together} ms zu spät, in jeder Hand allein höchstens ${reason.alone} ms`;
  }
}

/** Time, hands and chords; and what was meant. */
export function aboutTime({ crossing, name, spot, ofHand }: Notes): Pick<Clauses, keyof typeof ABOUT_TIME> {
  return {
    'hands-apart-for-now': ({ reason }) => ({
      sentence: `vorerst getrennte Hände: ${capital(apart(reason))}`,
      half: apart(reason),
      emphasis: 'vorerst getrennte Hände',
    }),
    'crossing-late-both-ways': ({ lateMs }) => ({
      sentence: `Unter- und Übersätze kommen aufwärts und abwärts ${lateMs} ms zu spät`,
      half: 'Unter- und Übersätze kommen in beiden Richtungen zu spät',
      emphasis: 'aufwärts und abwärts',
    }),
    'crossing-late-one-direction': ({ crossing: at, sameNote, times, lateMs }) => {
      const what = joined(WAYS[at.direction], sameNote ? `zu ${name(at.to)}` : '', ofHand(at.hand));
      return {
        sentence: `${movement(at.kind)} ${what} kommt ${times === 2 ? 'beide Male' : 'jedes Mal'} ${lateMs} ms zu spät`,
        half: `${movement(at.kind)} ${what} kommt zu spät`,
        emphasis: what,
      };
    },
    'crossing-late': ({ crossings }) => {
      const [worst] = crossings;
      const what = crossing(worst!.crossing);
      const many = `${count(crossings.length)} Unter- oder Übersätze kommen zu spät`;
      const both = twoAlike(crossings, (one) => crossing(one.crossing), 'und');
      if (both !== null)
        return {
          sentence: `${both.what} ${both.twice ? 'kommt zweimal' : 'kommen'} zu spät, um ${both.ms} ms`,
          half: `${both.what} ${both.twice ? 'kommt zweimal' : 'kommen'} zu spät`,
          emphasis: both.what,
        };
      return crossings.length === 1
        ? {
            sentence: `${what} kommt ${worst!.lateMs} ms zu spät`,
            half: `${what} kommt zu spät`,
            emphasis: what,
          }
        : {
            sentence: `${many}, am meisten ${what}, um ${worst!.lateMs} ms`,
            half: many,
            emphasis: what,
          };
    },
    'late-note': ({ notes }) => {
      const [worst] = notes;
      const what = spot(worst!.at);
      const both = twoAlike(notes, (one) => spot(one.at), 'und');
      if (both !== null)
        return {
          sentence: `${both.what} ${both.twice ? 'kommt zweimal' : 'kommen'} zu spät, um ${both.ms} ms`,
          half: `${both.what} ${both.twice ? 'kommt zweimal' : 'kommen'} zu spät`,
          emphasis: both.what,
        };
      return notes.length === 1
        ? {
            sentence: `${what} kommt ${worst!.lateMs} ms zu spät`,
            half: `${what} kommt zu spät`,
            emphasis: what,
          }
        : {
            sentence: `zwei Töne kommen zu spät, am meisten ${what}, um ${worst!.lateMs} ms`,
            half: 'zwei Töne kommen zu spät',
            emphasis: what,
          };
    },
    'change-hesitates': ({ to, ratio }) => {
      const what = chordAfter('zu', to);
      return {
        sentence: `der Wechsel ${what} dauert ${figure(ratio, 1)}-mal so lang wie die anderen`,
        half: `der Wechsel ${what} stockt`,
        emphasis: what,
      };
    },
    'late-at-the-turn': ({ lateMs, chords }) => {
      const top = chords ? 'der oberste Akkord' : 'der oberste Ton';
      return {
        sentence: `der Weg abwärts beginnt ${lateMs} ms zu spät: ${capital(top)} wird gehalten`,
        half: `${top} wird zu lange gehalten`,
        emphasis: `${capital(top)} wird gehalten`,
      };
    },
    'uneven-in-pairs': ({ rhythm }) =>
      plain(`die Töne hinken paarweise, ${RHYTHMS[rhythm]}`, `paarweise, ${RHYTHMS[rhythm]}`),
    uneven: ({ percent, boundPercent }) => ({
      sentence: `die Zeit von Ton zu Ton schwankt um ${figure(percent, 0)} %; bis ${figure(boundPercent, 1)} % ist in diesem Tempo gleichmäßig`,
      half: 'die Töne sind ungleichmäßig',
      emphasis: `schwankt um ${figure(percent, 0)} %`,
    }),
    drift: ({ fromBpm, toBpm }) => {
      const what = `von ♩ = ${fromBpm} auf ${toBpm}`;
      return plain(`du wirst ${toBpm < fromBpm ? 'langsamer' : 'schneller'}, ${what}`, what);
    },
    'one-hand-leads': ({ first, byMs }) => {
      const what = `die ${HANDS[first]} Hand kommt ${byMs} ms früher`;
      return {
        sentence: `die Hände sind nicht zusammen: ${capital(what)}`,
        half: what,
        emphasis: capital(what),
      };
    },
    'hands-apart': () => ({
      sentence: 'die Hände sind nicht zusammen, mal ist die eine zuerst, mal die andere',
      half: 'die Hände sind nicht zusammen',
      emphasis: 'mal ist die eine zuerst, mal die andere',
    }),
    'chords-spread': ({ spreadMs, last, hand }) => {
      const whose = hand === null ? '' : ` der ${HANDS[hand]}n Hand`;
      return {
        sentence: `die Akkorde${whose} sind nicht zugleich angeschlagen: ${spreadMs} ms vom ersten bis zum letzten Ton${
          last === null ? '' : `, ${VOICES[last]} zuletzt`
        }`,
        half: `die Akkorde${whose} sind nicht zugleich angeschlagen`,
        emphasis: 'nicht zugleich angeschlagen',
      };
    },
    tired: ({ attempts, fromPercent, toPercent }) => ({
      sentence: `müde? Von den letzten ${count(attempts)} Versuchen war jeder ungleichmäßiger als der davor, von ${figure(fromPercent, 0)} bis ${figure(toPercent, 0)} %`,
      half: 'die letzten Versuche wurden immer ungleichmäßiger',
      emphasis: 'ungleichmäßiger als der davor',
    }),
    'inner-notes-soft': ({ softerDb }) =>
      softerDb === null
        ? plain('die Mittelstimmen der Akkorde klingen kaum oder gar nicht', 'die Mittelstimmen')
        : {
            sentence: `die Mittelstimmen sind viel leiser als die Außenstimmen, um ${figure(softerDb, 0)} dB`,
            half: 'die Mittelstimmen sind viel leiser als die Außenstimmen',
            emphasis: 'die Mittelstimmen',
          },
    'slows-to-the-end': ({ fromBpm, toBpm }) =>
      plain(
        `zum Schluss wirst du langsamer, von ♩ = ${fromBpm} auf ${toBpm}`,
        'zum Schluss wirst du langsamer',
      ),
    'broad-last-note': ({ lateMs }) =>
      plain(`der letzte Ton kommt breit, ${lateMs} ms später als gleichmäßig`, 'der letzte Ton kommt breit'),
    'in-a-rhythm': ({ rhythm }) => {
      const half = `gespielt ${RHYTHMS[rhythm]}`;
      return { sentence: `${half}: so gemeint?`, half, emphasis: RHYTHMS[rhythm] };
    },
    'tempo-sways': ({ slowBpm, fastBpm }) =>
      plain(
        `das Tempo schwingt sanft zwischen ♩ = ${slowBpm} und ${fastBpm}`,
        `zwischen ♩ = ${slowBpm} und ${fastBpm}`,
      ),
    'loudness-shaped': ({ way, byDb }) => {
      const half = LOUDER[way];
      return plain(`${half}, um etwa ${figure(byDb, 0)} dB`, half);
    },
    'accented-in-groups': ({ every, byDb }) => {
      const half = `${NTH[every] ?? `jeder ${every}.`} Ton ist betont`;
      return plain(`${half}, um etwa ${figure(byDb, 0)} dB`, half);
    },
    'pedal-held': () => ({
      sentence: 'das Pedal bleibt getreten, über die Artikulation lässt sich so nichts sagen',
      half: 'das Pedal bleibt getreten',
      emphasis: 'das Pedal bleibt getreten',
    }),
  };
}

export function partsAboutTime({ crossing, spot }: Notes): Parts {
  return {
    'crossing-late': ({ crossings }) =>
      crossings.map((one) => ({
        steps: [one.step],
        text: `${crossing(one.crossing)} kommt ${one.lateMs} ms zu spät`,
      })),
    'late-note': ({ notes }) =>
      notes.map((one) => ({ steps: [one.step], text: `${spot(one.at)} kommt ${one.lateMs} ms zu spät` })),
  };
}
