import type { Strings } from '../english/index.ts';

export const REPORT: Strings['report'] = {
  heard: 'Was zu hören war',
  stop: 'Stopp',
  playAll: 'Alles abspielen',
  allFound: 'Alles, was gefunden wurde',
  next: 'Als Nächstes:',
  switchTo: 'Dazu wechseln',
  meant: (title) => `Nein, gemeint war ${title}`,
  whichHand: (likelier) =>
    `Welche Hand gespielt hat, ist nicht zu hören. Gemessen ist sie als ${likelier === 'left' ? 'linke' : 'rechte'}, die in dieser Lage wahrscheinlicher ist.`,
  whichHandKeys: 'Welche Hand: L, R oder B für beide',
  wasHand: { left: 'Es war die linke', right: 'Es war die rechte', together: 'Es waren beide' },
  setUp: 'So einrichten',
  print: 'Drucken',
  whatItMeans: ': was das heißt',
  notMeasured: (reason) => `nicht gemessen: ${reason}`,
  table: 'Jeder Ton, als Tabelle',
  tableOfNotes: 'Tabelle der Töne',
  note: 'Ton',
  heardAs: 'Gehört',
  hand: 'Hand',
  finger: 'Finger',
  time: 'Zeit',
  loudness: 'Lautstärke',
  asRight: 'richtig',
  asWrong: (struck) => `falsch: ${struck} angeschlagen`,
  EXTRA: {
    slip: 'zu viel (mitgegriffen)',
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
    definition:
      'Jeder geschriebene Ton wird einmal beurteilt: richtig, falsch (eine andere Taste an seiner Stelle), fehlend oder unsicher; unsichere zählen auf keiner Seite.',
    meaning:
      'Richtige Töne von den geschriebenen. Zu viel sind Töne, zu denen kein geschriebener gehört: eine ' +
      'mitgegriffene Nachbartaste, ein wiederholter Ton oder ein neuer Ansatz.',
    of: (right, expected, rest) => `${right} von ${expected}, ${rest}`,
    wrong: (count) => `${count} falsch`,
    missed: (count) => (count === 1 ? '1 fehlt' : `${count} fehlen`),
    unsure: (count) => `${count} unsicher`,
    extra: (count) => (count === 0 ? 'keiner zu viel' : `${count} zu viel`),
  },
  evenness: {
    term: 'Schwankung der Zeit',
    definition:
      '100-mal die Standardabweichung der Zeiten von Schritt zu Schritt (je Schlag) durch ihren Mittelwert; der eigene Zeitfehler des Hörens ist herausgerechnet (Variationskoeffizient, wie van Vugt et al. 2012).',
    meaning:
      'Wie sehr die Zeit von Ton zu Ton schwankt, in Prozent dieser Zeit; 0 wäre eine Maschine. Wie viel noch als ' +
      'gleichmäßig gilt, hängt vom Tempo ab. Das ± sagt, wie weit das Hören selbst danebenliegen kann.',
    without: (amount) => `; ohne Unter- und Übersatz ${amount}`,
    upTo: (amount) => `; bis ${amount} ist bei diesem Tempo gleichmäßig`,
  },
  crossings: {
    term: 'Unter- und Übersätze',
    definition:
      'Die Zeit in den Unter- oder Übersatz minus den Median der vier nächsten Zeiten ohne ihn. Zu spät heißt: mehr als ein Zehntel dieser Zeit, schnell gespielt mehr als 24 ms (viermal so viel, wie man eben merkt, Friberg & Sundberg 1995; viermal: üblich, ohne Quelle) oder was eingestellt wurde, und mehr als deine Streuung sonst.',
    meaning:
      'Wie viel länger der Schritt in einen Untersatz des Daumens oder einen Übersatz dauert als die Schritte ' +
      'darum herum. Plus ist zu spät.',
    up: (delays) => `${delays} aufwärts`,
    down: (delays) => `${delays} abwärts`,
    range: (least, most) => `${least} bis ${most}`,
  },
  spread: {
    term: 'Akkorde zugleich',
    definition:
      'Letzter Einsatz minus erster Einsatz in einer Hand, ohne den Fehler des Hörens selbst; der Median über alle Akkorde. Die Reihenfolge ist ab etwa 20 ms zu unterscheiden (Hirsh 1959).',
    meaning:
      'Vom ersten bis zum letzten Ton eines Akkords, der mittlere Wert aller Akkorde. Bis 40 ms klingt es wie einer.',
    figure: (spread) => `${spread} vom ersten bis zum letzten Ton`,
  },
  changes: {
    term: 'Akkordwechsel',
    definition: 'Die längste Zeit von Akkord zu Akkord durch den Median der anderen.',
    meaning: 'Der langsamste Wechsel gegen den üblichen; 1 heißt: kein Zögern.',
    figure: (ratio) => `der langsamste dauert ${ratio}-mal so lang wie üblich`,
    silence: (amount) => `; ${amount} Stille zwischen den Akkorden`,
    held: (amount) => `; Akkorde ${amount} in den nächsten hinein gehalten`,
    either: (amount) => `; Akkorde gebunden oder knapp getrennt (± ${amount})`,
  },
  inner: {
    term: 'Mittelstimmen',
    definition:
      'Mittlerer Pegel der Mittelstimmen von Akkorden minus den der Außenstimmen derselben Akkorde, in Dezibel.',
    meaning: 'Wie laut die Mittelstimmen der Akkorde gegen die Außenstimmen sind.',
    louder: (amount) => `${amount} lauter als die äußeren`,
    softer: (amount) => `${amount} leiser als die äußeren`,
    either: (amount) => `lauter oder leiser als die äußeren (± ${amount})`,
  },
  together: {
    term: 'Hände zusammen',
    definition:
      'Bei jedem Schritt der mittlere Einsatz der linken Hand minus den der rechten; über die Schritte ihr Mittelwert (wer führt) und ihre Standardabweichung, ohne den Fehler des Hörens selbst.',
    meaning:
      'Welche Hand im Mittel zuerst kommt, und wie sehr das von Stelle zu Stelle schwankt. Bis 40 ms klingt es ' +
      'zusammen; die lautere Hand kommt von selbst etwa 25 ms früher.',
    left: (amount) => `links zuerst, um ${amount}`,
    right: (amount) => `rechts zuerst, um ${amount}`,
    either: (amount) => `keine sicher zuerst (± ${amount})`,
    varies: (amount) => `; schwankt um ${amount}`,
  },
  loudness: {
    term: 'Schwankung der Lautstärke',
    definition:
      'Standardabweichung der Pegel richtiger Töne um eine Gerade über der Tonhöhe, für jede Hand; wo die Tasten dieses Klaviers aus anderen Versuchen bekannt sind, um den Pegel jeder Taste. Eine Änderung ist ab etwa 0,7 bis 1,2 dB zu hören (Slade et al. 2022).',
    meaning:
      'Wie sehr die Lautstärke von Ton zu Ton schwankt; dass tiefe und hohe Tasten verschieden laut klingen, ist ' +
      'herausgerechnet. Solange die Tasten dieses Klaviers nicht bekannt sind, stecken ihre Unterschiede darin. Einen Unterschied von etwa einem Dezibel kann man gerade hören.',
    asItSounds: ', wie es hier klingt',
    keysAllowedFor: ', ohne die Unterschiede der Tasten dieses Klaviers',
    thumbLouder: (amount) => `; der Daumen ${amount} lauter als die anderen`,
    thumbSofter: (amount) => `; der Daumen ${amount} leiser als die anderen`,
  },
  tempo: {
    term: 'Tempo',
    definition:
      '60 durch den Median der Zeit eines Schlags in Sekunden. Die Drift ist die Steigung einer Geraden durch alle Zeiten, die in keinen Unter- oder Übersatz führen.',
    meaning: 'Schläge in der Minute, aus dem mittleren Abstand: Ein Zögern ändert daran nichts.',
    aim: (bpm) => ` (Ziel ${bpm})`,
    steady: ', stetig',
    slower: (amount) => `, am Ende ${amount} langsamer`,
    faster: (amount) => `, am Ende ${amount} schneller`,
  },
  touch: {
    term: 'Artikulation',
    definition:
      'Median über alle Töne einer Hand: Dämpfung eines Tons minus den Einsatz des nächsten. Fehlt, wo die Dämpfung der meisten Töne nicht zu hören ist.',
    meaning:
      'Wie lange eine Taste noch gehalten wird, wenn die nächste klingt (gebunden), oder wie lang die Lücke ist ' +
      '(getrennt).',
    connected: (amount) => `gebunden: Töne überlappen sich um ${amount}`,
    detached: (amount) => `getrennt: Lücken von ${amount}`,
    either: (amount) => `gebunden oder knapp getrennt (± ${amount})`,
  },
  piano: {
    term: 'Das Klavier',
    definition:
      'Der Mittelwert über die gehörten Tasten, von jeder der Median ihrer Abweichung von der gleichstufigen Stimmung auf A = 440 Hz; Ausreißer bleiben weg, die halbe übliche Spreizung ist zugestanden.',
    meaning:
      'Wie hoch dieses Klavier im Ganzen gestimmt ist. Das hast nicht du gespielt: Das Hören richtet sich danach.',
    asAFork: 'wie eine Stimmgabel',
    cents: () => 'Cent',
    flat: (amount) => `${amount} zu tief`,
    sharp: (amount) => `${amount} zu hoch`,
  },
};
