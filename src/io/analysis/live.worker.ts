/** Runs the live ear in a worker of its own: listening goes on while an attempt is analysed in another. */
import { createLiveEar } from '../../engine/index.ts';
import type { LiveEar } from '../../engine/index.ts';
import type { FromLiveEar, ToLiveEar } from './live-messages.ts';

const reply = (message: FromLiveEar): void => self.postMessage(message);
let open: ((channels: number) => LiveEar) | null = null;
let ear: LiveEar | null = null;
/** told before the first block came */
let waiting: ((ear: LiveEar) => void)[] = [];

const tell = (what: (ear: LiveEar) => void): void => {
  if (ear === null) waiting.push(what);
  else what(ear);
};

function take(message: ToLiveEar): void {
  switch (message.kind) {
    case 'open':
      open = (channels) => createLiveEar({ sampleRateHz: message.sampleRateHz, channels }, message.options);
      return;
    case 'own-sound':
      return tell((one) => one.mute(message.sound));
    case 'piano':
      return tell((one) => one.usePiano(message.piano));
    case 'block': {
      if (ear === null) {
        ear = open!(message.channels.length);
        for (const what of waiting) what(ear);
        waiting = [];
      }
      const events = ear.push(message.channels);
      if (events.length > 0) reply({ kind: 'events', events });
      return;
    }
    case 'end':
      reply({ kind: 'events', events: ear?.flush() ?? [] });
      return reply({ kind: 'ended' });
  }
}

self.addEventListener('message', (event: MessageEvent<ToLiveEar>) => {
  try {
    take(event.data);
  } catch (error) {
    reply({ kind: 'failed', message: error instanceof Error ? error.message : String(error) });
  }
});
