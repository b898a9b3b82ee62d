import { mount } from 'svelte';
import attemptUrl from '../audio-fixtures/late-thumb/attempt.wav?url';
import { createAnalyst, openLiveListener } from './io/analysis/index.ts';
import { decodeInBrowser, readsAac } from './io/decode/browser.ts';
import { loadDecoders } from './io/decode/index.ts';
import { createHistory } from './io/history/index.ts';
import { canListen, listMicrophones, openMicrophone } from './io/microphone/index.ts';
import { createOffline } from './io/offline/index.ts';
import { createOpened } from './io/opened/index.ts';
import { createPlayback } from './io/playback/index.ts';
import { createPulse } from './io/pulse/index.ts';
import { canStayAwake, createScreen } from './io/screen/index.ts';
import { createKeptPassages } from './io/scores/kept.ts';
import { createDrafts, createSettings } from './io/settings/index.ts';
import { createReceived, createShare } from './io/share/index.ts';
import { createShelf } from './io/shelf/index.ts';
import { createSpeech } from './io/speech/index.ts';
import { createTones } from './io/tone/index.ts';
import { createUnfinished } from './io/unfinished/index.ts';
import App from './ui/App.svelte';
import { CurrentAttempt, EXAMPLE, type Bundled } from './ui/attempt/current-attempt.svelte.ts';
import { Fingerings } from './ui/attempt/fingerings.svelte.ts';
import { Journal } from './ui/attempt/journal.svelte.ts';
import { Parcel } from './ui/send/parcel.svelte.ts';
import { Plan } from './ui/attempt/plan.svelte.ts';
import { Player } from './ui/attempt/player.svelte.ts';
import { Together } from './ui/attempt/together.svelte.ts';
import { Passages } from './ui/prepare/passages.svelte.ts';
import { Reviews } from './ui/practice/reviews.svelte.ts';
import type { Versions } from './ui/attempt/retiming.ts';
import { Room } from './ui/sitting/state/room.svelte.ts';
import type { Sound } from './ui/attempt/sound.ts';
import { Sitting } from './ui/sitting/state/sitting.svelte.ts';
import { ThisPiano } from './ui/sitting/state/this-piano.ts';
import { Views } from './ui/views.svelte.ts';
import './ui/kit/tokens.css';
import './ui/kit/common.css';
import { createTeacher } from './teacher.ts';
import { languageOf, learn, speaking } from './ui/language/index.ts';

/** audio-fixtures/late-thumb/truth.json says what it is. */
const BUNDLED: Bundled = {
  name: 'example attempt',
  load: async () => (await fetch(attemptUrl)).arrayBuffer(),
  choice: { key: 'Ab major', form: 'arpeggio', hands: 'right', octaves: 2 },
  targetBpm: 80,
};

const settings = createSettings(() => localStorage);
// Where its strings cannot be had, English serves.
await learn(languageOf(settings, navigator.languages)).catch(() => undefined);
speaking.remember(settings, navigator.languages);

const eachFrame = (tick: () => boolean): void => {
  const frame = (): void => {
    if (tick()) requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
};
const playerOf = (sound: Sound, versions: Versions | null): Player =>
  new Player(createPlayback(sound), eachFrame, versions);

const analyst = createAnalyst();
const journal = new Journal(createHistory());
/** What reads and writes reviews comes when the first one does. */
const reviewFiles = () => import('./io/review/index.ts');
const reviews = new Reviews(
  {
    shelf: createShelf(),
    isReview: async (file) => (await reviewFiles()).isReview(file),
    read: async (file) => (await reviewFiles()).readReview(file),
    decode: decodeInBrowser,
  },
  journal,
);
const parcel = new Parcel(
  {
    encode: async (sound) => (await import('./io/encode/index.ts')).encodeSound(sound),
    write: async (review) => (await reviewFiles()).writeReview(review),
    share: createShare(navigator),
    settings,
    newId: () => crypto.randomUUID(),
  },
  journal,
);
const fingerings = new Fingerings(settings);
const plan = new Plan(fingerings);
plan.remember(settings);
const passages = new Passages({
  kept: createKeptPassages(),
  open: async (file, bars) => (await import('./io/scores/index.ts')).openPassages(file, bars),
  encode: async (choices) => (await import('./io/scores/index.ts')).encodePassages(choices),
  hearing: { analyst, decode: decodeInBrowser, openMicrophone },
});
// Of this tab alone: another, or one of another day, is not opened for it.
passages.remember(createDrafts(() => sessionStorage));
void passages.load();
journal.passages = passages;
const own = () => passages.list;
const piano = new ThisPiano(settings);
const unfinished = createUnfinished();
const opened = createOpened();
const currentAttempt = new CurrentAttempt(
  {
    analyst,
    decode: decodeInBrowser,
    openMicrophone,
    listMicrophones,
    piano,
    opened,
    unfinished,
    createPlayback,
    own,
    locale: () => speaking.locale,
    eachFrame,
  },
  plan,
  journal,
);

/** What sorts comes when a file may hold several attempts. */
const together = new Together(
  {
    opened,
    sort: async (file, name) => {
      const sorters = (await import('./io/sorting/index.ts')).createSorters();
      try {
        return (
          await sorters.sort(file, name, {
            locale: speaking.locale,
            criteria: journal.standards.criteria,
            own: own(),
          })
        ).attempts;
      } finally {
        sorters.close();
      }
    },
  },
  currentAttempt,
);

const ears = {
  analyst,
  openMicrophone,
  openLiveListener,
  piano,
};
const sitting = new Sitting(
  {
    ...ears,
    own,
    fingerings,
    locale: () => speaking.locale,
    journal,
    listMicrophones,
    onDevicesChange: (callback) => navigator.mediaDevices?.addEventListener('devicechange', callback),
    pulse: createPulse(),
    screen: createScreen(),
    settings,
    speech: createSpeech(() => speaking.language),
    spoken: async (assessment) => (await import('./ui/names/spoken.ts')).spokenVerdict(assessment),
    unfinished,
  },
  plan,
);
void sitting.recover();
void currentAttempt.recover();

/** A newer version waits until it is asked for; while developing there is none. */
const offline = import.meta.env.PROD
  ? createOffline(new URL('offline.js', document.baseURI))
  : { onNewVersion: () => undefined, useNewVersion: () => undefined };

/** The page for teachers, with all that only it needs; what it sorts goes on while another page is shown. */
const teacher = createTeacher({
  analyst,
  fingerings,
  criteria: () => journal.standards.criteria,
  goals: () => journal.standards.goals,
  own,
  receive: (values) => passages.receive(values),
  decode: decodeInBrowser,
  openMicrophone,
  playerOf: (sound, versions) => new Player(createPlayback(sound), eachFrame, versions),
  locale: () => speaking.locale,
});

const views = new Views({
  read: () => location.hash.slice(1),
  write: (hash) => (location.hash = hash),
  // Empty, it would be no part of the address and leave the one before.
  rewrite: (hash) => history.replaceState(null, '', `#${hash}`),
  onChange: (callback) => addEventListener('hashchange', callback),
});

const opensExample = new URLSearchParams(location.search).get('attempt') === 'bundled';
if (opensExample && views.current === 'play' && views.place === '') views.stay(`attempt/${EXAMPLE}`);

const target = document.getElementById('app');
if (target !== null)
  mount(App, {
    target,
    props: {
      currentAttempt,
      together,
      received: createReceived(window),
      plan,
      journal,
      reviews,
      parcel,
      passages,
      playerOf,
      views,
      bundled: BUNDLED,
      can: { listen: canListen(), readAac: readsAac(), stayAwake: canStayAwake() },
      tones: createTones(createPlayback),
      piano: { sitting, room: new Room(ears), piano },
      offline,
      teacher: { open: teacher, memory: settings },
    },
  });
/** How long after the page is there the listening is made ready, ms: the first touch goes before. */
const SETTLE_MS = 1500;
/** A listening that finds nothing brings in the worker and all its parts. */
const NOTHING = { channels: [new Float32Array(4800)], sampleRateHz: 48_000 };

/** Brings in what comes into use later, so that the first report comes as soon as the others. */
async function makeReady(): Promise<void> {
  const parts = [
    journal.load(),
    reviews.load(),
    loadDecoders(),
    import('./ui/report/Report.svelte'),
    import('./ui/plots/staff/draw.ts').then(({ loadMusicFont }) => loadMusicFont()),
    ...(currentAttempt.busy || currentAttempt.front !== null ? [] : [analyst.analyse(NOTHING, null, {})]),
  ];
  await Promise.allSettled(parts);
}

setTimeout(() => void makeReady(), SETTLE_MS);
