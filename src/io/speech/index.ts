/** The browser's own voice. */
export interface Speech {
  /** false: this browser has none */
  readonly available: boolean;
  /** Says a text → resolves when it has been said, was stopped, or could not be said. One at a time: the last goes. */
  say(text: string): Promise<void>;
  stop(): void;
}

/** Longer than any voice takes: some browsers never tell of the end. Slow speech has about 10 letters a second (memory). */
const LONGEST_MS = { start: 3000, letter: 120 } as const;

/** `language`: a BCP 47 tag, e.g. "en", asked for each time. */
export function createSpeech(language: () => string): Speech {
  const voice = 'speechSynthesis' in window ? window.speechSynthesis : null;
  let end: () => void = () => undefined;
  const stop = (): void => {
    voice?.cancel();
    end();
  };
  return {
    available: voice !== null,
    say: (text) => {
      stop();
      if (voice === null || text === '') return Promise.resolve();
      return new Promise((resolve) => {
        const timer = setTimeout(() => stop(), LONGEST_MS.start + text.length * LONGEST_MS.letter);
        end = () => {
          clearTimeout(timer);
          resolve();
        };
        const utterance = new SpeechSynthesisUtterance(text);
        utterance.lang = language();
        utterance.addEventListener('end', end);
        utterance.addEventListener('error', end);
        voice.speak(utterance);
      });
    },
    stop,
  };
}
