import type { NoteNaming } from '../../../../exercise/index.ts';
import { keyName } from '../../../../exercise/index.ts';
import { tellNotice } from '../../../../notices/index.ts';
import type { Task } from '../../said/index.ts';
import { ofChords } from '../types.ts';
import type { Steps } from '../types.ts';
import { count, hands, list, tempo, times } from './places.ts';
import type { Notes } from './places.ts';
import { practising, RHYTHMS } from './practice.ts';

const VOICES = {
  lowest: 'auf dem tiefsten Ton',
  inner: 'auf der Mittelstimme',
  highest: 'auf dem höchsten Ton',
} as const;
const HANDS = { left: 'linke', right: 'rechte' } as const;
const DONE = 'bis es dreimal hintereinander stimmt';
const EVEN = 'bis es dreimal hintereinander gleichmäßig ist';

const thenWhole = ({ stretch: { kind } }: Task): string => (kind === 'whole' ? '' : '; dann das Ganze');

/** What to do next, for how long, and what counts as done. */
export function nextSteps({ only, stretch, name }: Notes, naming: NoteNaming): Steps {
  return {
    'record-again': ({ finding }) =>
      finding === null
        ? 'Spiel noch einmal, mit dem Gerät ein bis zwei Meter vom Klavier entfernt.'
        : tellNotice(finding, { language: 'de', naming }),
    'check-the-choice': () => 'Prüf Tonart und Übung, dann spiel noch einmal.',
    'switch-or-again': () => 'Wechsle dazu, wenn du das wolltest, oder spiel die gewählte Übung noch einmal.',
    'go-on-or-the-other': () => 'Mach damit weiter, oder sag, dass du das andere wolltest.',
    'wait-then-begin': () => 'Warte, bis zugehört wird, dann spiel von Anfang an.',
    'straight-through': ({ task }) =>
      `${only(task)}, dreimal hintereinander ohne Halt durch diese Stelle${thenWhole(task)}.`,
    'until-right': ({ task, note }) =>
      `${only(task)}, ${note === null ? DONE : `bis ${name(note)} dreimal hintereinander klingt`}${thenWhole(task)}.`,
    'one-note-more': ({ task }) =>
      `${only(task)}: zwei ${ofChords(task) ? 'Akkorde' : 'Töne'}, dann drei, dann jedes Mal einen mehr, jede Länge zweimal ohne Fehler${thenWhole(task)}.`,
    'five-times-right': ({ task }) =>
      `${only(task)}, bis es fünfmal hintereinander stimmt${thenWhole(task)}.`,
    'cadence-alone': ({ task, note }) => `${only(task)}, und sag dabei „${name(note)}“, ${DONE}.`,
    'say-the-note': ({ task, note }) => `${only(task)}, und sag dabei „${name(note)}“, ${DONE}.`,
    'say-the-signature': ({ signature: { kind, names }, task, note }) =>
      `Sag die Vorzeichen (${kind === 'none' ? 'keine' : list(names.map(name))}); dann ${only(task)}, bis ${name(note)} dreimal hintereinander stimmt${thenWhole(task)}.`,
    'position-as-a-chord': ({ names, task }) =>
      `Schlag ${names.map(name).join('–')} als Akkord an, heb ab, schlag noch einmal an, dreimal; dann Ton für Ton, ${tempo(task)}, ${DONE}.`,
    'shape-silently': ({ task }) =>
      `${only(task)}, jeder erst stumm gedrückt, bis dreimal hintereinander jeder Ton klingt.`,
    rest: () =>
      'Mach eine Pause, und spiel später oder morgen weiter. Bei Schmerzen oder Taubheit hör auf, und frag deine Lehrkraft und eine Ärztin oder einen Arzt.',
    'middle-of-the-key': ({ task }) =>
      `${only(task)}, jeder Finger mitten auf seiner Taste, ${DONE}${thenWhole(task)}.`,
    'these-keys-only': ({ task }) =>
      `${only(task)}, diese Tasten und keine anderen, ${DONE}${thenWhole(task)}.`,
    'go-on': ({ task }) =>
      `${only(task)}; was auch geschieht, geh weiter zum nächsten ${ofChords(task) ? 'Akkord' : 'Ton'}, dreimal hintereinander.`,
    'cross-early': ({ task }) =>
      `${only(task)}, ${DONE}. Bereite den Ton nach dem Unter- oder Übersatz früh vor, und lass die Taste dahinter im Vorbeigehen los.`,
    'cross-in-rhythm': ({ task, rhythm }) =>
      `${only(task)}, erst ${RHYTHMS[rhythm]}, dann umgekehrt, dann gleichmäßig, jedes, bis es zweimal hintereinander stimmt.`,
    'one-way-first': ({ task }) => `${only(task)}, ${DONE}; abwärts genauso; dann beides.`,
    'each-hand-alone': ({ task }) =>
      `jede Hand allein, ${stretch(task.stretch)}, ${tempo(task)}, bis jede dreimal hintereinander gleichmäßig ist; dann beide Hände.`,
    'next-shape': ({ task }) =>
      `${only(task)}: Halt den Akkord, schau auf den nächsten Griff, dann geh in einer Bewegung hin, bis er dreimal hintereinander rechtzeitig kommt.`,
    'think-of-the-way-down': ({ task, chords }) =>
      `${only(task)}: Denk vor dem obersten ${chords ? 'Akkord' : 'Ton'} schon an den Weg abwärts, bis es dreimal hintereinander rechtzeitig weitergeht.`,
    'the-other-rhythm': ({ task, rhythm }) =>
      `${only(task)}, umgekehrt, ${RHYTHMS[rhythm]}, dann gleichmäßig, jedes, ${DONE}.`,
    rhythms: ({ task }) =>
      `${only(task)}, erst lang–kurz, dann kurz–lang, dann gleichmäßig, jedes, bis es zweimal hintereinander stimmt.`,
    'slower-with-the-pulse': ({ task }) => `${only(task)}, mit dem Puls, ${EVEN}${thenWhole(task)}.`,
    'listen-to-the-other': ({ task, hand }) =>
      `${only(task)}, und hör auf die ${HANDS[hand]} Hand, bis beide dreimal hintereinander zusammen sind.`,
    'stop-on-each-beat': ({ task }) =>
      `${only(task)}: Bleib auf jedem Schlag stehen, beide Hände zugleich, ${DONE}.`,
    'fall-as-one': ({ task, last }) =>
      `${only(task)}: Erst alle Tasten berühren, ${
        last === null ? 'dann auf einmal hinunter' : `das Gewicht ${VOICES[last]}`
      }, bis drei hintereinander wie einer klingen.`,
    'at-the-tempo': ({ task }) => `dasselbe, ${tempo(task)}, ${EVEN}.`,
    practise: ({ task, rhythm, times, before, rung, intention = { rhythm, times } }) => {
      const lead = before
        ? 'jetzt mit dem, was davor kommt: '
        : rung === undefined
          ? ''
          : rung === 'up'
            ? 'die nächste Sprosse: '
            : 'zwei Sprossen zurück, und bleib vorerst dort: ';
      return `${lead}${only(task)}, ${practising(intention)}.`;
    },
    'now-the-whole': ({ task }) => `jetzt das Ganze, ${tempo(task)}.`,
    'same-tempo-with-the-pulse': ({ task }) => `${only(task)}, mit dem Puls, ${EVEN}${thenWhole(task)}.`,
    'if-meant': () =>
      'Wenn du es so wolltest, dasselbe noch einmal; wenn nicht, mit dem Puls, bis es zweimal hintereinander gleichmäßig ist.',
    'the-same-again': ({ inARow, days }) => {
      if (inARow === null) return 'dasselbe noch einmal von Anfang an.';
      const on = days === undefined ? '' : ` an ${count(days)} Tagen`;
      return `dasselbe noch einmal; ${times(inARow)} hintereinander${on}, dann sitzt es.`;
    },
    'on-another-day': () => 'noch einmal an einem anderen Tag; dann sitzt es.',
    'make-it-stay': () => 'dasselbe noch einmal, damit es bleibt.',
    'other-hand': ({ hand, task }) =>
      `die ${HANDS[hand]} Hand allein, ${tempo(task)}, ${EVEN}; dann beide Hände zusammen.`,
    'hands-together': ({ task, other }) =>
      `${hands('together')}, ${stretch(task.stretch)}, ${tempo(task)}, ${DONE}; die ${HANDS[other]} Hand sitzt auch.`,
    'faster-or-next-key': ({ task, nextKey }) =>
      `dasselbe, ${tempo(task)}, ${EVEN}; oder die nächste Tonart im Quintenzirkel, ${keyName(nextKey, { language: 'de', naming })}.`,
  };
}
