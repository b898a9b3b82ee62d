import { mount } from 'svelte';
import attemptUrl from '../audio-fixtures/late-thumb/attempt.wav?url';
import { createAnalyst, openLiveEar } from './io/analysis/index.ts';
import { decodeInBrowser, warmUp } from './io/decode/browser.ts';
import { listMicrophones, openMicrophone } from './io/microphone/index.ts';
import { createOffline } from './io/offline/index.ts';
import { createPlayback } from './io/playback/index.ts';
import { createPulse } from './io/pulse/index.ts';
import { createScreen } from './io/screen/index.ts';
import { browserStore, createSettings } from './io/settings/index.ts';
import { createSpeech } from './io/speech/index.ts';
import { createUnfinished } from './io/unfinished/index.ts';
import App from './ui/App.svelte';
import { Desk, type Bundled, type Sound } from './ui/attempt/desk.svelte.ts';
import { keepForThisVisit } from './ui/attempt/keeper.ts';
import { Plan } from './ui/attempt/plan.svelte.ts';
import { Player, type EachFrame } from './ui/attempt/player.svelte.ts';
import { Room } from './ui/attempt/room.svelte.ts';
import { Stand } from './ui/attempt/stand.svelte.ts';
import { ThisPiano } from './ui/attempt/this-piano.ts';
import { Views } from './ui/attempt/views.svelte.ts';
import './ui/kit/tokens.css';

/** audio-fixtures/late-thumb/truth.json says what it is. */
const BUNDLED: Bundled = {
  name: 'example attempt',
  load: async () => (await fetch(attemptUrl)).arrayBuffer(),
  choice: { key: 'Ab major', form: 'arpeggio', hands: 'right', octaves: 2 },
  targetBpm: 80,
};

const eachFrame: EachFrame = (tick) => {
  const frame = (): void => {
    if (tick()) requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
};

const analyst = createAnalyst();
const plan = new Plan();
const desk = new Desk(
  {
    analyst,
    decode: decodeInBrowser,
    openMicrophone: (deviceId) => openMicrophone({ deviceId }),
    listMicrophones,
    createPlayback,
    eachFrame,
  },
  plan,
);
const settings = createSettings(browserStore());
const piano = new ThisPiano(settings);
const ears = {
  analyst,
  openMicrophone: (deviceId: string | null) => openMicrophone({ deviceId }),
  openLiveEar,
  piano,
};
const stand = new Stand(
  {
    ...ears,
    keeper: keepForThisVisit(),
    listMicrophones,
    onDevicesChange: (callback) => navigator.mediaDevices?.addEventListener('devicechange', callback),
    pulse: createPulse(),
    screen: createScreen(),
    settings,
    speech: createSpeech('en'),
    unfinished: createUnfinished(),
  },
  plan,
);
void stand.recover();

const views = new Views({
  read: () => location.hash.slice(1),
  write: (hash) => (location.hash = hash),
  onChange: (callback) => addEventListener('hashchange', callback),
});

/** A newer version waits until it is asked for; while developing there is none. */
const offline = import.meta.env.PROD
  ? createOffline(new URL('offline.js', document.baseURI))
  : { onNewVersion: () => undefined, useNewVersion: () => undefined };

const target = document.getElementById('app');
if (target !== null)
  mount(App, {
    target,
    props: {
      desk,
      plan,
      views,
      bundled: BUNDLED,
      piano: {
        stand,
        room: new Room(ears),
        piano,
        openPlayer: (sound: Sound) => new Player(createPlayback(sound), eachFrame),
      },
      offline,
    },
  });
const opensExample = new URLSearchParams(location.search).get('attempt') === 'bundled';
if (opensExample) void desk.openBundled(BUNDLED);

/** How long after the page is there the listening is made ready, ms: the first touch goes before. */
const SETTLE_MS = 1500;
/** A listening that finds nothing brings in the worker and all its parts. */
const NOTHING = { channels: [new Float32Array(4800)], sampleRateHz: 48_000 };

/** Brings in what comes into use later, so that the first report comes as soon as the others. */
async function makeReady(): Promise<void> {
  const parts = [
    warmUp(),
    import('./ui/plots/staff/draw.ts').then(({ loadMusicFont }) => loadMusicFont()),
    ...(desk.busy || opensExample ? [] : [analyst.analyse(NOTHING, null, {})]),
  ];
  await Promise.allSettled(parts);
}

setTimeout(() => void makeReady(), SETTLE_MS);
