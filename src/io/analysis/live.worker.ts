/** Runs the live listener in a worker of its own: listening goes on while an attempt is analysed in another. */
import { troubleOf } from '../troubles/index.ts';
import { createLiveListener } from '../../engine/index.ts';
import type { LiveListener } from '../../engine/index.ts';
import type { FromLiveListener, ToLiveListener } from './messages.ts';

const reply = (message: FromLiveListener): void => self.postMessage(message);
let open: ((channels: number) => LiveListener) | null = null;
let ear: LiveListener | null = null;
/** told before the first block came */
let waiting: ((ear: LiveListener) => void)[] = [];

const tell = (what: (ear: LiveListener) => void): void => {
  if (ear === null) waiting.push(what);
  else what(ear);
};

function take(message: ToLiveListener): void {
  switch (message.kind) {
    case 'open':
      open = (channels) =>
        createLiveListener({ sampleRateHz: message.sampleRateHz, channels }, message.options);
      return;
    case 'own-sound':
      return tell((one) => one.mute(message.sound));
    case 'piano':
      return tell((one) => one.usePiano(message.piano));
    case 'expected':
      return tell((one) => one.expect(message.expected));
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

self.addEventListener('message', (event: MessageEvent<ToLiveListener>) => {
  try {
    take(event.data);
  } catch (error) {
    reply({ kind: 'failed', trouble: troubleOf(error) });
  }
});
