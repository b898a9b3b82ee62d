import { nameWithOctave } from '../exercise/index.ts';
import type { NoteNaming } from '../exercise/index.ts';
import { amount as inEnglish } from './amounts.ts';
import type { Tellings } from './types.ts';

const PROCESSING = {
  'echo-cancellation': 'Echounterdrückung',
  'noise-suppression': 'Rauschunterdrückung',
  'automatic-gain': 'selbsttätiger Aussteuerung',
} as const;
const DAMPED = {
  notes: 'bei den meisten Tönen ist nicht zu hören, wann sie enden',
  chords: 'bei den meisten Akkorden ist nicht zu hören, wann sie enden',
  'this-chord': 'bei diesem Akkord ist nicht zu hören, wann er endet',
} as const;
const INTERVALS = {
  first: 'der erste Abstand',
  last: 'der letzte Abstand',
  turn: 'der Abstand nach dem Wendepunkt',
} as const;

const amount = (value: number, decimals = 0): string => inEnglish(value, decimals, ',');

/** Every notice in German, as in english.ts. */
export function german(naming: NoteNaming): Tellings {
  const of = (name: string): string => nameWithOctave(name, naming);
  return {
    'too-short': ({ lastsSec }) =>
      `Die Aufnahme dauert ${amount(lastsSec, 2)} s; nimm von vor dem ersten bis nach dem letzten Ton auf.`,
    silence: () => 'Die Aufnahme ist still; sieh nach, ob das richtige Mikrofon gewählt und nicht stumm ist.',
    'bad-samples': ({ samples }) =>
      `${samples} Abtastwerte waren keine Zahlen und gelten als Stille; dekodiere oder nimm es noch einmal auf.`,
    'too-quiet': ({ peakDb }) =>
      `Die lauteste Stelle erreicht nur ${amount(peakDb)} dB, gemessen an der Vollaussteuerung; stell das Mikrofon näher oder seinen Pegel höher.`,
    clipping: ({ times }) =>
      `Der Klang ist ${times}-mal abgeschnitten, weil er für das Mikrofon zu laut war; stell es weiter weg oder seinen Pegel tiefer.`,
    'dead-channel': ({ channels }) =>
      `Einer der ${channels} Kanäle ist ohne Klang; der andere wurde genommen.`,
    'channels-cancel': ({ lostDb }) =>
      `Die Kanäle löschen einander aus (ihr Mittel verliert ${amount(lostDb)} dB); nur der stärkere wurde genommen.`,
    noise: ({ aboveDb }) =>
      `Das Spiel liegt nur ${amount(aboveDb)} dB über den Geräuschen des Raums; schließ das Fenster oder stell das Mikrofon näher.`,
    hum: ({ mainsHz, belowDb }) =>
      `Netzbrummen bei ${amount(mainsHz)} Hz liegt ${amount(belowDb)} dB unter dem Spiel; stell das Gerät weg von Ladegeräten und Kabeln.`,
    speech: ({ places }) =>
      `An ${places} Stellen scheint eine Stimme zu klingen; Töne darunter können verloren gehen.`,
    'not-a-piano': () =>
      'Es ist Klang da, aber nichts darin verhält sich wie eine angeschlagene Klaviersaite; sieh nach, ob das Klavier aufgenommen wurde.',
    'no-notes': () => 'Darin waren keine Klaviertöne zu hören.',
    'not-recognised': () =>
      'Die Töne passen zu keiner Übung der Sammlung gut genug, um zu sagen, zu welcher. Wähl die Übung und ihre Tonart.',
    'cut-at': ({ minutes }) =>
      `Sie ist länger als ${amount(minutes, minutes % 1 === 0 ? 0 : 1)} Minuten; der Rest wurde weggelassen. Schneide sie, um den Rest zu hören.`,
    'partly-read': ({ readSec, wholeSec }) =>
      `Ein Teil der Datei fehlt oder ist beschädigt: ${amount(readSec, 1)} s von ${amount(wholeSec, 1)} s wurden gelesen.`,
    'form-changes': ({ afterSec }) =>
      `Der Klang ändert nach ${amount(afterSec, 1)} s seine Form; nur was davor kommt, wurde gelesen.`,
    'channels-left-out': ({ channels, read }) =>
      `Sie hat ${channels} Kanäle; die ersten ${read} wurden gelesen.`,
    'one-channel-taken': ({ channels }) =>
      `Sie hat ${channels} Kanäle; genommen wurde der, auf dem am meisten klingt.`,
    'damaged-after': () => 'Die Datei ist beschädigt; was vor dem Schaden kommt, wurde gelesen.',
    'holes-filled': () => 'Die Aufnahme hat Löcher; sie wurden mit Stille gefüllt, damit die Zeiten stimmen.',
    'breaks-off': ({ thereSec, wholeSec }) =>
      `Die Datei bricht ab: ${amount(thereSec, 1)} s von ${amount(wholeSec, 1)} s sind da.`,
    'device-processing': ({ by }) =>
      `Das Gerät hat mit ${PROCESSING[by]} aufgenommen; sie verändert die Lautstärke und kann leise Töne verdecken.`,
    'sound-lost': ({ lostSec }) =>
      `Etwa ${amount(lostSec, lostSec < 1 ? 2 : 1)} s Klang sind verloren, weil das Gerät beschäftigt war. Schließ andere Apps, und spiel diesen Versuch noch einmal.`,
    'page-closed': () =>
      'Die Seite wurde während dieses Versuchs geschlossen; was bis dahin geklungen hatte, ist aufgehoben.',
    'no-note-judged': () => 'kein Ton war zu beurteilen',
    'needs-thumb-and-others': () => 'braucht zwei Tasten des Daumens und zwei anderer Finger',
    'needs-right-notes': ({ needed, there }) => `braucht ${needed} richtige Töne; es gibt ${there}`,
    'needs-right-notes-of-each-hand': () => 'braucht drei richtige Töne jeder Hand',
    'within-own-error': ({ errorDb }) =>
      `nicht mehr als der Fehler des Hörens selbst, ${amount(errorDb, 1)} dB je Ton`,
    'needs-intervals': ({ needed, there }) =>
      `braucht ${needed} Abstände ohne Unterbrechung; es gibt ${there}`,
    'no-turn': () => 'diese Übung hat keinen Wendepunkt',
    'interval-not-whole': ({ which }) => `${INTERVALS[which]} war nicht ganz zu hören`,
    'hand-not-known': () => 'niemand hat gesagt, welche Hand gespielt hat',
    'no-crossing': () => 'diese Übung hat keinen Unter- oder Übersatz',
    'no-crossing-whole': () => 'kein Unter- oder Übersatz war ganz zu hören',
    'needs-chords': () => 'braucht zwei Akkorde',
    'needs-chords-of-one-hand': () => 'braucht zwei Akkorde einer Hand',
    'needs-chords-of-three': () => 'braucht zwei Akkorde aus drei Tönen',
    'needs-changes': () => 'braucht drei Akkordwechsel',
    'needs-steps-of-both-hands': () => 'braucht drei Stellen, an denen beide Hände zu hören sind',
    'too-few-between-ends': () => 'zu wenige Töne zwischen den Enden, um damit zu vergleichen',
    'pedal-held': () => 'das Pedal blieb getreten',
    'levels-cut': () => 'das Lauteste des Klangs war abgeschnitten',
    'damping-not-heard': ({ of: what }) => DAMPED[what],
    'may-be-covered': ({ name }) =>
      `${of(name)} kann von demselben Ton eine Oktave tiefer verdeckt sein, der zugleich angeschlagen wurde`,
    'too-faint-to-name': ({ name }) =>
      `wo ${of(name)} hingehört, klang etwas, aber zu schwach, um die Taste zu nennen`,
    'too-faint': ({ name }) => `${of(name)} war zu schwach zu hören, um zu sagen, ob es angeschlagen wurde`,
    'not-certain': ({ name }) => `ob ${of(name)} angeschlagen wurde, ist nicht sicher genug`,
    'may-be-held-over': ({ name }) => `${of(name)} kann vom vorigen Akkord liegen geblieben sein`,
  };
}
