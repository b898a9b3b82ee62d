import type { Strings } from '../english/index.ts';

export const REPORT: Strings['report'] = {
  heard: 'Was zu hören war',
  stop: 'Stopp',
  playAll: 'Alles abspielen',
  half: 'halbes Tempo',
  next: 'Als Nächstes:',
  switchTo: 'Dazu wechseln',
  setUp: 'So einrichten',
  print: 'Drucken',
  whatItMeans: ': was das heißt',
  notMeasured: (reason) => `nicht gemessen: ${reason}`,
  table: 'Jeder Ton, als Tabelle',
  tableOfNotes: 'Tabelle der Töne',
  note: 'Ton',
  heardAs: 'Gehört',
  finger: 'Finger',
  time: 'Zeit',
  loudness: 'Lautstärke',
  asRight: 'richtig',
  asWrong: (wanted) => `falsch, statt ${wanted}`,
  EXTRA: {
    slip: 'zu viel (mitgenommen)',
    repeat: 'zu viel (wiederholt)',
    restart: 'zu viel (neu angesetzt)',
    other: 'zu viel',
  },
  asMissed: 'fehlt',
  asUnsure: (reason) => `unsicher: ${reason}`,
  keyNumber: (midi) => `Taste ${midi}`,
  otherOctave: (octaves, hand) => {
    const distance = Math.abs(octaves) === 1 ? 'eine Oktave' : `${Math.abs(octaves)} Oktaven`;
    const who = hand === null ? '' : hand === 'left' ? 'Die linke Hand hat ' : 'Die rechte Hand hat ';
    const words = `${who}${distance} ${octaves > 0 ? 'höher' : 'tiefer'} als geschrieben gespielt`;
    return `${words.charAt(0).toUpperCase()}${words.slice(1)}; das ist kein Fehler.`;
  },
  playedAgain: (times) =>
    `Die Übung wurde ${times}-mal gespielt; dies ist der Bericht über eines dieser Male.`,
  stopBefore: (gap, note) => `Eine Pause von ${gap} vor dem ${note}. Ton.`,
};

export const MEASURES: Strings['measures'] = {
  notes: {
    term: 'Töne',
    meaning:
      'Richtige Töne von den geschriebenen. Zu viel sind Töne, zu denen kein geschriebener gehört: eine ' +
      'mitgenommene Nachbartaste, ein wiederholter Ton oder ein neuer Ansatz.',
    of: (right, expected, rest) => `${right} von ${expected}, ${rest}`,
    wrong: (count) => `${count} falsch`,
    missed: (count) => (count === 1 ? '1 fehlt' : `${count} fehlen`),
    unsure: (count) => `${count} unsicher`,
    extra: (count) => (count === 0 ? 'keiner zu viel' : `${count} zu viel`),
  },
  evenness: {
    term: 'Gleichmaß der Zeit',
    meaning:
      'Wie sehr die Zeit von Ton zu Ton schwankt, in Prozent dieser Zeit; 0 wäre eine Maschine. Acht Prozent oder ' +
      'weniger ist gleichmäßig. Das ± sagt, wie weit das Hören selbst danebenliegen kann.',
    without: (amount) => `; ohne die Übergänge ${amount}`,
  },
  crossings: {
    term: 'Unter- und Übersätze',
    meaning:
      'Wie viel länger der Schritt in einen Untersatz des Daumens oder einen Übersatz dauert als die Schritte ' +
      'darum herum. Plus ist zu spät.',
    up: (delays) => `${delays} aufwärts`,
    down: (delays) => `${delays} abwärts`,
    range: (least, most) => `${least} bis ${most}`,
    none: 'nicht gemessen: Kein Übergang war ganz zu hören',
  },
  spread: {
    term: 'Akkorde zugleich',
    meaning:
      'Vom ersten bis zum letzten Ton eines Akkords, der mittlere Wert aller Akkorde. Bis 40 ms klingt es wie einer.',
    figure: (spread) => `${spread} vom ersten bis zum letzten Ton`,
  },
  changes: {
    term: 'Akkordwechsel',
    meaning: 'Der langsamste Wechsel gegen den üblichen; 1 heißt: kein Zögern.',
    figure: (ratio) => `der langsamste dauert ${ratio}-mal so lang wie üblich`,
    silence: (amount) => `; ${amount} Stille zwischen den Akkorden`,
    held: (amount) => `; Akkorde ${amount} in den nächsten hinein gehalten`,
  },
  inner: {
    term: 'Innere Töne',
    meaning: 'Wie laut die inneren Töne der Akkorde gegen die äußeren sind.',
    louder: (amount) => `${amount} lauter als die äußeren`,
    softer: (amount) => `${amount} leiser als die äußeren`,
  },
  together: {
    term: 'Hände zusammen',
    meaning:
      'Welche Hand im Mittel zuerst kommt, und wie sehr das von Stelle zu Stelle schwankt. Bis 40 ms klingt es ' +
      'zusammen; die lautere Hand kommt von selbst etwa 25 ms früher.',
    left: (amount) => `links zuerst, um ${amount}`,
    right: (amount) => `rechts zuerst, um ${amount}`,
    varies: (amount) => `; schwankt um ${amount}`,
  },
  loudness: {
    term: 'Gleichmaß der Lautstärke',
    meaning:
      'Wie sehr die Lautstärke von Ton zu Ton schwankt; dass tiefe und hohe Tasten verschieden laut klingen, ist ' +
      'herausgerechnet. Einen Unterschied von etwa einem Dezibel kann man gerade hören.',
    thumbLouder: (amount) => `; der Daumen ${amount} lauter als die anderen`,
    thumbSofter: (amount) => `; der Daumen ${amount} leiser als die anderen`,
  },
  tempo: {
    term: 'Tempo',
    meaning: 'Schläge in der Minute, aus dem mittleren Abstand: Ein Zögern ändert daran nichts.',
    aim: (bpm) => ` (Ziel ${bpm})`,
    steady: ', stetig',
    slower: (amount) => `, am Ende ${amount} langsamer`,
    faster: (amount) => `, am Ende ${amount} schneller`,
  },
  touch: {
    term: 'Anschlag',
    meaning:
      'Wie lange eine Taste noch gehalten wird, wenn die nächste klingt (gebunden), oder wie lang die Lücke ist ' +
      '(getrennt).',
    connected: (amount) => `gebunden: Töne überlappen um ${amount}`,
    detached: (amount) => `getrennt: Lücken von ${amount}`,
  },
  piano: {
    term: 'Das Klavier',
    meaning:
      'Wie hoch dieses Klavier im Ganzen gestimmt ist. Das hast nicht du gespielt: Das Hören richtet sich danach.',
    asAFork: 'wie eine Stimmgabel',
    cents: () => 'Cent',
    flat: (amount) => `${amount} zu tief`,
    sharp: (amount) => `${amount} zu hoch`,
  },
};
