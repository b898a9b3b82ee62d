/** The figures of the detail: what each means, how it is defined, and each point in words. Figures come with their units. */
export const DETAIL = {
  show: 'Show the detail',
  showHint: 'timing, loudness, hands, chords and tempo, note by note',
  staff: 'On the staff',
  staffHint: 'with marks, as a teacher would write them in',
  graph: (title: string) => `${title}. Arrow keys move from note to note, Enter plays that spot.`,
  asTable: (title: string) => `${title}, as a table`,
  more: 'How it is measured, and the figures as a table',
  axes: (unit: string, above: string, below: string) => `${unit}; up ${above}, down ${below}`,
  step: 'Step',
  note: 'Note',
  hand: 'Hand',
  look: ' – look here',
  ofHand: (place: string, hand: string) => `${place}, ${hand} hand`,
  timing: {
    title: 'Timing, note by note',
    meaning:
      'How much later or earlier each note comes than it would in the tempo that you were playing. In the grey band nobody can hear it.',
    definition: (usual: string) =>
      `The time from the note’s even place, where the string of pearls has its tick: one usual step (${usual} here, and followed ` +
      'where the tempo changes) after the note before, or after where that was due. The band is the least difference ' +
      'that can be heard in even notes: 6 ms, or 2.5 % of times above 240 ms (Friberg and Sundberg 1995). A note is ' +
      'marked only where it also stands out from the listening’s own error.',
    band: 'not audible',
    above: 'late',
    below: 'early',
    late: (place: string, amount: string, after: string) => `${place}: ${amount} late, after ${after}`,
    early: (place: string, amount: string, after: string) => `${place}: ${amount} early, after ${after}`,
    crossing: ', a crossing',
    inaudible: ', too little to be heard',
  },
  tempo: {
    title: 'Tempo along the attempt',
    meaning: 'Where you hurry and where you hold back. The line across is your middle tempo.',
    definition:
      'Beats a minute over the beat that ends with each note: its beats by the time they took. The grey band is 2.5 % ' +
      'about the middle tempo, the least change that can be heard (Friberg and Sundberg 1995); more than 10 % away is ' +
      'marked (common practice, no source).',
    unit: 'beats a minute',
    band: 'not audible',
    above: 'faster',
    below: 'slower',
    point: (place: string, bpm: string, off: string) => `${place}: ${bpm} beats a minute, ${off} per cent`,
  },
  loudness: {
    title: 'Loudness, note by note',
    meaning:
      'Which notes stick out and which get lost, after taking out that low and high keys sound differently loud by ' +
      'themselves.',
    definition: (marked: string) =>
      'Power of the note’s own partials over its first tenth of a second, less a straight line over pitch through all ' +
      'right notes of the hand; a chord by the mean of its notes. The grey band is ± 1 dB: about the least change that ' +
      `can be heard (Slade et al. 2022). More than ${marked} is marked (common practice, no source).`,
    band: 'not audible',
    above: 'louder',
    below: 'softer',
    louder: (place: string, amount: string) => `${place}: ${amount} louder`,
    softer: (place: string, amount: string) => `${place}: ${amount} softer`,
  },
  hands: {
    title: 'Hands apart, step by step',
    meaning: 'Which hand comes first and by how much. In the grey band nobody can tell.',
    definition: (marked: string) =>
      'Mean onset of the left hand’s notes less that of the right hand’s. Which of two sounds came first can be told from ' +
      `about 20 ms on (Hirsh 1959); more than ${marked} is marked. A louder key arrives some 20 to 30 ms earlier by ` +
      'itself (Goebl 2001).',
    band: 'not to be told',
    above: 'right first',
    below: 'left first',
    leftFirst: (place: string, amount: string) => `${place}: the left hand first by ${amount}`,
    rightFirst: (place: string, amount: string) => `${place}: the right hand first by ${amount}`,
  },
  spread: {
    title: 'Chords struck as one',
    meaning:
      'How long each chord takes from its first note to its last. Within the grey band it sounds as one.',
    definition: (marked: string) =>
      'Last onset less first onset within one hand, as heard; the listening’s own error adds a few milliseconds. The ' +
      `grey band ends at ${marked} (common practice, no source).`,
    band: 'as one',
    point: (place: string, amount: string) => `${place}: ${amount} from first to last note`,
  },
};
