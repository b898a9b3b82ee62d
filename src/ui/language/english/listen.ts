/** Listening to an attempt: speed, stretch, and the ways to hear it. */
export const LISTEN = {
  stretchButton: 'Play the stretch',
  speed: 'speed',
  perCent: (percent: number) => `${percent} per cent`,
  loop: 'again and again',
  retimed: 'this is the re-timed sound',
  hear: 'Hear it',
  ways: {
    played: { label: 'As played', meaning: 'Just as it was recorded.' },
    even: {
      label: 'Even',
      meaning:
        'Your own sound, with each note moved to its even place at your own tempo. Nothing else is changed.',
    },
    beside: {
      label: 'As played, then even',
      meaning:
        'First as you played it, then with each note on its even place: the ear hears what the figures say.',
    },
    crossings: {
      label: 'Crossings in time',
      meaning: 'As you played it, only without the delay at the late crossings.',
    },
  },
  stretch: 'Stretch to play',
  from: 'from',
  to: 'to',
  whole: 'The whole',
  hearIt: ': hear it',
};
