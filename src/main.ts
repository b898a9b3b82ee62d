import { mount } from 'svelte';
import attemptUrl from '../audio-fixtures/late-thumb/attempt.wav?url';
import { createAnalyst } from './io/analysis/index.ts';
import { decodeInBrowser, warmUp } from './io/decode/browser.ts';
import { listMicrophones, openMicrophone } from './io/microphone/index.ts';
import recorderUrl from './io/microphone/recorder.worklet.ts?worker&url';
import { createPlayback } from './io/playback/index.ts';
import { createSettings } from './io/settings/index.ts';
import { createTones } from './io/tone/index.ts';
import App from './ui/App.svelte';
import { Desk, type Bundled } from './ui/attempt/desk.svelte.ts';
import { Plan } from './ui/attempt/plan.svelte.ts';
import { Views } from './ui/attempt/views.svelte.ts';
import './ui/kit/tokens.css';
import { speaking } from './ui/language/index.ts';

/** audio-fixtures/late-thumb/truth.json says what it is. */
const BUNDLED: Bundled = {
  name: 'example attempt',
  load: async () => (await fetch(attemptUrl)).arrayBuffer(),
  choice: { key: 'Ab major', form: 'arpeggio', hands: 'right', octaves: 2 },
  targetBpm: 80,
};

speaking.remember(
  createSettings(() => localStorage),
  navigator.languages,
);

const analyst = createAnalyst();
const plan = new Plan();
const desk = new Desk(
  {
    analyst,
    decode: decodeInBrowser,
    openMicrophone: (deviceId) => openMicrophone({ deviceId }),
    listMicrophones,
    createPlayback,
    tongue: () => speaking.tongue,
    eachFrame: (tick) => {
      const frame = (): void => {
        if (tick()) requestAnimationFrame(frame);
      };
      requestAnimationFrame(frame);
    },
  },
  plan,
);

const views = new Views({
  read: () => location.hash.slice(1),
  write: (hash) => (location.hash = hash),
  onChange: (callback) => addEventListener('hashchange', callback),
});

const target = document.getElementById('app');
if (target !== null)
  mount(App, { target, props: { desk, plan, views, bundled: BUNDLED, tones: createTones(createPlayback) } });
const opensExample = new URLSearchParams(location.search).get('attempt') === 'bundled';
if (opensExample) void desk.openBundled(BUNDLED);

/** How long after the page is there everything else is fetched, ms: the first touch goes before. */
const SETTLE_MS = 1500;
/** A listening that finds nothing brings in the worker and all its parts. */
const NOTHING = { channels: [new Float32Array(4800)], sampleRateHz: 48_000 };

/** Fetches what comes into use later, so that the page goes on working when the network goes. */
async function prepareForOffline(): Promise<void> {
  const parts = [
    warmUp(),
    import('./ui/plots/staff/draw.ts').then(({ loadMusicFont }) => loadMusicFont()),
    import('./ui/theory/Theory.svelte'),
    import('./ui/plots/staff/signature.ts'),
    fetch(attemptUrl),
    fetch(recorderUrl),
    ...(desk.busy || opensExample ? [] : [analyst.analyse(NOTHING, null, {})]),
  ];
  await Promise.allSettled(parts);
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  const files = performance
    .getEntriesByType('resource')
    .map(({ name }) => name)
    .filter((name) => name.startsWith(location.origin));
  await navigator.serviceWorker.register(new URL('offline.js', document.baseURI));
  const { active } = await navigator.serviceWorker.ready;
  active?.postMessage([...new Set([location.origin + location.pathname, ...files])]);
}

setTimeout(() => void prepareForOffline(), SETTLE_MS);
