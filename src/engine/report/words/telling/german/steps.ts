import type { NoteNaming } from '../../../../exercise/index.ts';
import { keyName } from '../../../../exercise/index.ts';
import { tellNotice } from '../../../../notices/index.ts';
import type { Steps } from '../types.ts';
import { hands, list, tempo, times } from './places.ts';
import type { Notes } from './places.ts';
import { practising, RHYTHMS } from './practice.ts';

const VOICES = {
  lowest: 'in den tiefsten Ton',
  inner: 'in die Mittelstimme',
  highest: 'in den höchsten Ton',
} as const;
const HANDS = { left: 'linke', right: 'rechte' } as const;
const DONE = 'bis es dreimal hintereinander stimmt';

/** What to do next, for how long, and what counts as done. */
export function nextSteps({ only, part, stretch, name }: Notes, naming: NoteNaming): Steps {
  return {
    'record-again': ({ finding }) =>
      finding === null
        ? 'Spiel noch einmal, mit dem Gerät ein bis zwei Meter vom Klavier entfernt.'
        : tellNotice(finding, { language: 'de', naming }),
    'check-the-choice': () => 'Prüf Tonart und Übung, dann spiel noch einmal.',
    'switch-or-again': () => 'Wechsle dazu, wenn du das wolltest, oder spiel die gewählte Übung noch einmal.',
    'go-on-or-the-other': () => 'Mach damit weiter, oder sag, dass du das andere wolltest.',
    'wait-then-begin': () => 'Warte, bis zugehört wird, dann spiel von Anfang an.',
    'straight-through': ({ task }) => `${only(task)}, dreimal ohne Halt durch diese Stelle.`,
    'until-right': ({ task, note }) =>
      `${only(task)}, ${note === null ? DONE : `bis ${name(note)} dreimal hintereinander klingt`}; dann das Ganze.`,
    'one-note-more': ({ task }) =>
      `${only(task)}: zwei Töne, dann drei, dann jedes Mal einen mehr, jede Länge zweimal ohne Fehler; dann das Ganze.`,
    'five-times-right': ({ task }) => `${only(task)}, bis es fünfmal hintereinander stimmt.`,
    'cadence-alone': ({ note }) => `Spiel nur i–V7–i, und sag dabei „${name(note)}“, ${DONE}.`,
    'say-the-note': ({ task, note }) => `${only(task)}, und sag dabei „${name(note)}“, ${DONE}.`,
    'say-the-signature': ({ signature: { kind, names } }) =>
      `Sag die Vorzeichen (${kind === 'none' ? 'keine' : list(names.map(name))}), spiel die Tonleiter einmal langsam, dann dies noch einmal.`,
    'position-as-a-chord': ({ names, task }) =>
      `Schlag ${names.map(name).join('–')} als Akkord an, heb ab, schlag noch einmal an, dreimal; dann Ton für Ton, ${tempo(task)}.`,
    'shape-silently': () =>
      'Spiel das Ganze langsam: drück jeden Griff erst stumm, alle Tasten berührt, dann schlag ihn an; zweimal, sodass jeder Ton klingt.',
    rest: () =>
      'Mach eine Pause, und spiel später oder morgen weiter. Bei Schmerzen oder Taubheit hör auf, und frag deinen Lehrer oder einen Arzt.',
    'middle-of-the-key': ({ task }) => `${only(task)}, jeder Finger mitten auf seiner Taste, ${DONE}.`,
    'these-keys-only': ({ task }) => `${only(task)}, diese Tasten und keine anderen, ${DONE}.`,
    'go-on': ({ task }) => `${only(task)}; was auch geschieht, geh weiter zum nächsten Ton, dreimal.`,
    'cross-early': ({ task, kind }) =>
      kind === 'thumb-under'
        ? `${only(task)}, ${DONE}. Schick den Daumen früh los, und lass die Taste dahinter los, wenn er vorbeikommt.`
        : `${only(task)}, ${DONE}. Schick die Hand früh los, und lass mit dem Daumen los, wenn sie vorbeikommt.`,
    'cross-in-rhythm': ({ task, rhythm }) =>
      `${only(task)}, zweimal ${RHYTHMS[rhythm]}, zweimal umgekehrt; dann gleichmäßig, ${DONE}.`,
    'one-way-first': ({ task }) => `${part(task, 'nur aufwärts')}, ${DONE}; abwärts genauso; dann beides.`,
    'each-hand-alone': ({ task }) =>
      `jede Hand allein, ${stretch(task.stretch)}, ${tempo(task)}, bis jede dreimal hintereinander gleichmäßig ist; dann beide Hände.`,
    'next-shape': ({ task }) =>
      `${only(task)}: Halt den Akkord, schau auf den nächsten Griff, dann geh in einer Bewegung, ohne Ton dazwischen, dreimal.`,
    'think-of-the-way-down': ({ task, chords }) =>
      `${only(task)}, dreimal: Denk an den Weg abwärts, bevor du oben bist, und halt den obersten ${chords ? 'Akkord' : 'Ton'} nicht.`,
    'the-other-rhythm': ({ task, rhythm }) =>
      `${only(task)}, umgekehrt, ${RHYTHMS[rhythm]}, dreimal; dann gleichmäßig.`,
    rhythms: ({ task }) => `${only(task)}, zweimal lang–kurz, zweimal kurz–lang; dann zweimal gleichmäßig.`,
    'slower-with-the-pulse': ({ task }) => `${only(task)}, mit dem Puls, dreimal; dann das Ganze.`,
    'listen-to-the-other': ({ task, hand }) => `${only(task)}, dreimal, und hör auf die ${HANDS[hand]} Hand.`,
    'stop-on-each-beat': ({ task }) =>
      `${only(task)}: Bleib auf jedem Schlag stehen, beide Hände zugleich, dann geh weiter; dreimal.`,
    'fall-as-one': ({ last }) =>
      `Berühr alle Tasten, bevor du drückst, ${
        last === null
          ? 'dann lass den Arm auf einmal hineinfallen'
          : `und lass das Gewicht des Arms auch ${VOICES[last]} sinken`
      }; das Ganze langsam, vor jedem Akkord ein Halt, zweimal.`,
    'at-the-tempo': ({ task }) => `dasselbe, ${tempo(task)}.`,
    practise: ({ task, rhythm, times, before, intention = { rhythm, times } }) =>
      `${before ? 'jetzt mit dem, was davor kommt: ' : ''}${only(task)}, ${practising(intention)}.`,
    'now-the-whole': ({ task }) => `jetzt das Ganze, ${tempo(task)}.`,
    'same-tempo-with-the-pulse': () => 'dasselbe Tempo, mit dem Puls, zweimal.',
    'if-meant': () => 'Wenn du es so wolltest, dasselbe noch einmal; wenn nicht, einmal mit dem Puls.',
    'the-same-again': ({ inARow }) =>
      inARow === null
        ? 'dasselbe noch einmal.'
        : `dasselbe noch einmal; ${times(inARow)} hintereinander, dann sitzt es.`,
    'make-it-stay': () => 'dasselbe noch einmal, damit es bleibt.',
    'other-hand': ({ hand }) =>
      `die ${HANDS[hand]} Hand allein, auf dieselbe Art; dann beide Hände zusammen.`,
    'hands-together': ({ task, other }) =>
      `${hands('together')}, ${stretch(task.stretch)}, ${tempo(task)}, dreimal; die ${HANDS[other]} Hand sitzt auch.`,
    'faster-or-next-key': ({ task, nextKey }) =>
      `dasselbe, ${tempo(task)}; oder die nächste Tonart im Quintenzirkel, ${keyName(nextKey, { language: 'de', naming })}.`,
  };
}
