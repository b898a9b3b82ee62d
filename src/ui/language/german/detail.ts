import type { Strings } from '../english/index.ts';

export const DETAIL: Strings['detail'] = {
  show: 'Einzelheiten zeigen',
  showHint: 'Zeit, Lautstärke, Hände, Akkorde und Tempo, Ton für Ton',
  staff: 'In Noten',
  staffHint: 'mit Zeichen, wie eine Lehrkraft sie hineinschriebe',
  graph: (title) => `${title}. Die Pfeiltasten gehen von Ton zu Ton, die Eingabetaste spielt die Stelle.`,
  asTable: (title) => `${title}, als Tabelle`,
  more: 'Wie das gemessen wird, und die Zahlen als Tabelle',
  axes: (unit, above, below) => `${unit}; oben ${above}, unten ${below}`,
  step: 'Schritt',
  note: 'Ton',
  hand: 'Welche Hand',
  look: ' – hier hinschauen',
  ofHand: (place, hand) => `${place}, Hand: ${hand}`,
  timing: {
    title: 'Zeit, Ton für Ton',
    meaning:
      'Wie viel später oder früher jeder Ton kommt, als er in dem Tempo käme, das du gerade spielst. Im grauen Band hört es niemand.',
    definition: (usual) =>
      `Der Abstand vom gleichmäßigen Platz des Tons, wo die Perlenschnur ihren Strich hat: einen üblichen Schritt (hier ${usual}; ` +
      'wo sich das Tempo ändert, ändert er sich mit) nach dem Ton davor, oder nach dessen Platz. Das Band ist der kleinste Unterschied, ' +
      'der in gleichmäßigen Tönen zu hören ist: 6 ms, oder 2,5 % bei Zeiten über 240 ms (Friberg und Sundberg 1995). ' +
      'Hervorgehoben ist ein Ton nur, wenn er auch aus dem Fehler des Hörens selbst herausragt.',
    band: 'nicht zu hören',
    above: 'zu spät',
    below: 'zu früh',
    late: (place, amount, after) => `${place}: ${amount} zu spät, nach ${after}`,
    early: (place, amount, after) => `${place}: ${amount} zu früh, nach ${after}`,
    crossing: ', ein Unter- oder Übersatz',
    inaudible: ', zu wenig, um es zu hören',
  },
  tempo: {
    title: 'Tempo im Verlauf',
    meaning: 'Wo du schneller wirst und wo langsamer. Die Linie quer ist dein mittleres Tempo.',
    definition:
      'Schläge in der Minute über den Schlag, der mit jedem Ton endet: seine Schläge durch die Zeit, die sie brauchten. Das ' +
      'graue Band ist 2,5 % um das mittlere Tempo, die kleinste hörbare Änderung (Friberg und Sundberg 1995); mehr als ' +
      '10 % daneben ist hervorgehoben (üblich, ohne Quelle).',
    unit: 'Schläge in der Minute',
    band: 'nicht zu hören',
    above: 'schneller',
    below: 'langsamer',
    point: (place, bpm, off) => `${place}: ${bpm} Schläge in der Minute, ${off} Prozent`,
  },
  loudness: {
    title: 'Lautstärke, Ton für Ton',
    meaning:
      'Welche Töne herausstechen und welche verloren gehen; dass tiefe und hohe Tasten von selbst verschieden laut ' +
      'klingen, ist herausgerechnet.',
    definition: (marked) =>
      'Leistung der eigenen Teiltöne in der ersten Zehntelsekunde, minus eine Gerade über der Tonhöhe durch alle richtigen ' +
      'Töne der Hand; ein Akkord im Mittel seiner Töne. Das graue Band ist ± 1 dB: etwa die kleinste hörbare Änderung ' +
      `(Slade et al. 2022). Mehr als ${marked} ist hervorgehoben (üblich, ohne Quelle).`,
    band: 'nicht zu hören',
    above: 'lauter',
    below: 'leiser',
    louder: (place, amount) => `${place}: ${amount} lauter`,
    softer: (place, amount) => `${place}: ${amount} leiser`,
  },
  hands: {
    title: 'Hände auseinander, Schritt für Schritt',
    meaning: 'Welche Hand zuerst kommt und um wie viel. Im grauen Band kann es niemand sagen.',
    definition: (marked) =>
      'Mittlerer Einsatz der linken Hand minus den der rechten. Welcher von zwei Klängen zuerst kam, ist ab etwa 20 ms zu ' +
      `sagen (Hirsh 1959); mehr als ${marked} ist hervorgehoben. Eine lautere Taste kommt von selbst etwa 20 bis 30 ms ` +
      'früher an (Goebl 2001).',
    band: 'nicht zu sagen',
    above: 'rechts zuerst',
    below: 'links zuerst',
    leftFirst: (place, amount) => `${place}: die linke Hand ${amount} zuerst`,
    rightFirst: (place, amount) => `${place}: die rechte Hand ${amount} zuerst`,
  },
  spread: {
    title: 'Akkorde zugleich angeschlagen',
    meaning:
      'Wie lange jeder Akkord vom ersten bis zum letzten Ton braucht. Im grauen Band klingt er wie einer.',
    definition: (marked) =>
      'Letzter Einsatz minus erster Einsatz in einer Hand, wie gehört; der Fehler des Hörens selbst macht einige ' +
      `Millisekunden aus. Das graue Band endet bei ${marked} (üblich, ohne Quelle).`,
    band: 'wie einer',
    point: (place, amount) => `${place}: ${amount} vom ersten bis zum letzten Ton`,
  },
};
