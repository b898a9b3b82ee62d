import { speaking } from '../../../src/ui/language/index.ts';

/** English, and note names that follow the language, as where nothing was chosen: files of one worker share what is spoken. */
export const speakAsAtFirst = (): void => speaking.remember({ read: () => null, write: () => undefined }, []);
