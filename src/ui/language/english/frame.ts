/** What stands round every page. */
export const FRAME = {
  what:
    'Evenfall listens to your piano while you play an exercise, and says what was played and how evenly. Choose what you ' +
    'play, then record it or open a recording.',
  pages: 'Pages',
  play: 'Play',
  stand: 'At the piano',
  keys: 'Keys',
  journal: 'Journal',
  teacher: 'For teachers',
  careHead: 'Care.',
  care: 'With pain or numbness stop and rest, and ask your teacher and a health professional.',
  privacyHead: 'Privacy.',
  privacy:
    'Sound leaves this device only in files that you pass on yourself: there is no server and no account. Record children ' +
    'only with their guardian’s consent.',
  /** of what is kept, after what the browser promises */
  clearsUnused:
    'It also clears it after seven days of use without a visit here, unless the page is on the home screen (Share, Add to ' +
    'Home Screen).',
  language: 'Language',
  noteNames: 'Note names',
  namings: { letters: 'C D E … B', german: 'C D E … H', 'fixed-do': 'do re mi … si' },
  credits: 'Credits',
  /** before and after the link to the licence */
  creditsText: {
    before:
      'The example attempt is invented. It is put together from piano samples recorded by Alexander Holm, used and ' +
      'modified under the',
    after: ' licence. Music font: Bravura, SIL Open Font License 1.1.',
  },
  licence: 'Creative Commons Attribution 3.0',
  drop: 'Drop the recording',
  dropHere: 'Drop the review or the recording',
  noPlaying: 'No playing was found in this recording',
  notRecognised: 'The exercise could not be recognised',
  saveSound: 'Save the sound',
  adopt: 'Put it in the journal',
  adoptHint: 'if it is your own playing',
  adopted: 'It is in the journal.',
  search: 'Search',
  several: (count: number) => (count === 1 ? 'Opened with it' : `${count} recordings opened together`),
  notOpened: 'could not be opened',
  lastAttempt: (title: string) => `The last attempt: ${title}`,
  measureAs: (title: string) => `Measure it as ${title}`,
};
