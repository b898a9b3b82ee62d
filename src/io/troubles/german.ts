import { tellNotice } from '../../engine/index.ts';
import type { Locale } from '../../engine/index.ts';
import type { Tell, Tellings } from './types.ts';

const GERMAN: Locale = { language: 'de', naming: 'german' };
const CONVERT = 'Wandle sie in WAV, FLAC, MP3 oder Ogg um, dann versuch es noch einmal.';

const OTHERS = {
  midi: 'Sie ist eine MIDI-Datei: Die enthält Tasten, keinen Klang.',
  pdf: 'Sie ist ein PDF-Dokument.',
  jpeg: 'Sie ist ein JPEG-Bild.',
  png: 'Sie ist ein PNG-Bild.',
  zip: 'Sie ist ein ZIP-Archiv: Pack es erst aus.',
  'web-page': 'Sie ist eine Webseite, nicht die Datei dahinter.',
  rar: 'Sie ist ein RAR-Archiv, das hier nicht geöffnet wird: Pack ein Zip.',
  '7z': 'Sie ist ein 7z-Archiv, das hier nicht geöffnet wird: Pack ein Zip.',
  amr: `Sie ist AMR-Telefonklang. ${CONVERT}`,
  'windows-media': `Sie ist Windows-Media-Klang. ${CONVERT}`,
  wavpack: `Sie ist WavPack-Klang. ${CONVERT}`,
  avi: `Sie ist ein AVI-Video. ${CONVERT}`,
  'mpeg-video': `Sie ist ein MPEG-Video. ${CONVERT}`,
  'real-audio': `Sie ist RealAudio-Klang. ${CONVERT}`,
  'monkeys-audio': `Sie ist Monkey’s-Audio-Klang. ${CONVERT}`,
  dolby: `Sie ist Dolby-Klang. ${CONVERT}`,
  dsd: `Sie ist DSD-Klang. ${CONVERT}`,
  'sun-audio': `Sie ist Sun-Audio. ${CONVERT}`,
} as const;

/** System errors in plain words (POSIX errno names). */
const SYSTEM: Readonly<Record<string, string>> = {
  ENOENT: 'Diese Datei gibt es nicht. Prüf den Namen und den Ordner.',
  EISDIR: 'Das ist ein Ordner. Nenn die Dateien darin, etwa ORDNER/*.',
  EACCES: 'Sie darf nicht gelesen werden. Prüf ihre Rechte.',
  EPERM: 'Sie darf nicht gelesen werden. Prüf ihre Rechte.',
};

const OF = { WAV: 'WAV-', AIFF: 'AIFF-', 'Core Audio': 'Core-Audio-' } as const;

const NO_ROOM = {
  journal:
    'Auf diesem Gerät ist kein Platz mehr für das Tagebuch. Sichere es in eine Datei, dann lösch den Klang älterer Versuche.',
  reviews:
    'Auf diesem Gerät ist kein Platz mehr für die Rückmeldung. Lösch ältere Rückmeldungen oder den Klang älterer Versuche, dann öffne sie noch einmal.',
  recordings:
    'Auf diesem Gerät ist kein Platz mehr für Aufnahmen. Mach die Rückmeldungen, die anstehen, dann lösch ältere Aufnahmen.',
} as const;

const KEEPS_NOTHING = {
  journal:
    'Dieser Browser führt hier kein Tagebuch, wie in einem privaten Fenster. Versuche werden berichtet, aber nicht aufgehoben; sichere ihren Klang.',
  reviews:
    'Dieser Browser bewahrt hier keine Rückmeldungen auf, wie in einem privaten Fenster. Die Rückmeldung wird gezeigt, aber nicht gesichert; behalte ihre Datei.',
  recordings:
    'Dieser Browser bewahrt hier keine Aufnahmen auf, wie in einem privaten Fenster. Öffne die Seite in einem gewöhnlichen.',
} as const;

const KEPT = { journal: 'das Tagebuch', reviews: 'die Rückmeldungen', recordings: 'die Aufnahmen' } as const;
const NOT_KEPT = {
  journal: 'Das Tagebuch ließ sich nicht benutzen',
  reviews: 'Die Rückmeldungen ließen sich nicht benutzen',
  recordings: 'Die Aufnahmen ließen sich nicht aufbewahren',
} as const;

const DATE = new Intl.DateTimeFormat('de-DE', { dateStyle: 'long' });
const TIME = new Intl.DateTimeFormat('de-DE', { timeStyle: 'short' });

/** An attempt in a file, by when it was played. */
const attemptOf = (whenMs: number | null): string =>
  whenMs === null ? 'Ein Versuch' : `Ein Versuch vom ${DATE.format(whenMs)}, ${TIME.format(whenMs)} Uhr,`;

/** What of an attempt lies at a place of its schema. */
const PARTS: Readonly<Record<string, string>> = {
  report: 'Sein Bericht',
  choice: 'Seine Übung',
  intention: 'Was zu üben war,',
  targetBpm: 'Sein Zieltempo',
};
const partOf = (place: string): string => PARTS[place.split('.')[0]!] ?? 'Was von ihm aufgeschrieben ist,';

/** Every trouble in German, with the way out where there is one; a file is „sie“ throughout. */
export const german = (tell: Tell): Tellings => ({
  within: ({ name, of }) => `${name}: ${tell(of)}`,
  'page-opens-it': ({ of }) => `${tell(of)} Die Seite im Browser kann sie auch öffnen.`,
  'file-empty': 'Die Datei ist leer (0 Bytes). Nimm sie noch einmal auf oder schick sie noch einmal.',
  'file-unknown': `Sie ist keine Klangdatei bekannter Art, oder sie ist beschädigt. ${CONVERT}`,
  'file-other': ({ what }) => OTHERS[what],
  'file-unreadable': 'Sie ließ sich nicht lesen. Liegt sie noch, wo sie lag?',
  'no-backup': 'Es ist keine Sicherung der Seite für Lehrkräfte.',
  'backup-newer':
    'Sie stammt aus einem neueren Evenfall. Lade diese Seite neu und hol sie dann noch einmal herein.',
  'backup-damaged': 'Sie ist beschädigt, und nichts davon kam herein. Nimm eine andere.',
  'same-sound': ({ name }) => `Es ist dieselbe Aufnahme wie ${name}.`,
  'file-gone': 'Diese Aufnahme ist nicht mehr da. Gib sie noch einmal.',
  'attempt-gone':
    'Dieser Versuch liegt nicht oder nicht mehr auf diesem Gerät. Eine Aufnahme, die geöffnet war, lässt sich noch einmal öffnen.',
  'file-damaged': 'Sie ließ sich nicht lesen: Die Datei ist beschädigt. Schick sie noch einmal.',
  'contents-damaged':
    'Ihr Inhalt ist nicht in Ordnung: abgeschnitten oder beschädigt. Schick sie noch einmal.',
  'end-cut-off':
    'Die Datei wurde unterwegs abgeschnitten: Ihr Ende fehlt, ohne das sich der Rest nicht lesen lässt. Schick sie noch einmal.',
  'packet-list-missing':
    'Die Datei ist abgeschnitten: Das Verzeichnis, nach dem sie gelesen wird, fehlt. Schick sie noch einmal.',
  'sound-locked':
    'Ihr Klang ist gesperrt: Nur das Programm, mit dem er gekauft wurde, kann ihn öffnen. Nimm ihn selbst auf.',
  'ogg-without-sound': `Sie ist eine Ogg-Datei ohne Opus-, Vorbis- oder FLAC-Klang. ${CONVERT}`,
  'opus-channels': ({ channels }) => `Sie ist Opus-Klang mit ${channels} Kanälen. ${CONVERT}`,
  'opus-header-senseless': `Der Anfang ihres Opus-Klangs ergibt keinen Sinn. ${CONVERT}`,
  'no-wav': 'Sie ist keine WAV-Datei. Dekodiere sie erst, oder wandle sie in WAV um.',
  'wav-header-short':
    'Die Datei ist beschädigt: Ihr Anfang ist unvollständig. Nimm sie noch einmal auf oder gib sie noch einmal aus.',
  'header-missing': ({ container }) =>
    `Der ${OF[container]}Kopf fehlt: Die Datei ist beschädigt. Nimm sie noch einmal auf oder gib sie noch einmal aus.`,
  'container-without-sound': ({ container }) =>
    `Sie ist eine ${OF[container]}Datei ohne Klang darin. Nimm sie noch einmal auf oder gib sie noch einmal aus.`,
  'header-senseless': ({ container, channels, rateHz, bits }) =>
    `Ihr ${OF[container]}Kopf ergibt keinen Sinn (${channels} Kanäle, ${rateHz} Hz, ${bits} Bit): Die Datei ist beschädigt.`,
  'packed-otherwise': ({ container, codec }) =>
    `Sie ist eine ${OF[container]}Datei mit ${codec === null ? 'gepacktem Klang seltener Art' : `${codec}-Klang`}. ${CONVERT}`,
  'nothing-after-header':
    'Auf ihren Anfang folgt kein Klang: Die Datei ist abgeschnitten. Schick sie noch einmal oder gib sie noch einmal aus.',
  'no-mp3-frame':
    'Kein Stück der MP3 ist ganz: Die Datei ist abgeschnitten oder beschädigt. Schick sie noch einmal.',
  'nothing-decoded':
    'Daraus ließ sich kein Klang lesen: Die Datei ist abgeschnitten oder beschädigt. Schick sie noch einmal.',
  'rate-impossible': ({ rateHz }) =>
    `Sie gibt ${rateHz} Abtastwerte in der Sekunde an, die keine Aufnahme hat: Die Datei ist beschädigt.`,
  'no-sound-track': `Es ist kein Klang darin. ${CONVERT}`,
  'codec-unknown': `Sie enthält eine Art von Klang, die hier nicht bekannt ist. ${CONVERT}`,
  'codec-other': ({ codec }) => `Sie enthält ${codec}-Klang, der hier nicht gelesen werden kann. ${CONVERT}`,
  'zip-damaged':
    'Sie ist keine ZIP-Datei, oder sie ist beschädigt oder abgeschnitten. Schick oder speichere sie noch einmal.',
  'zip-too-large': ({ mostMb }) => `Sie ist größer als ${mostMb} MB; das wird hier nicht geöffnet.`,
  'zip-too-many': ({ files, most }) => `Sie enthält ${files} Dateien; bis zu ${most} werden geöffnet.`,
  'zip-in-parts': 'Sie ist ein Teil von mehreren. Pack sie als eine Datei.',
  'zip-locked': 'Sie ist mit einem Passwort verschlossen. Pack sie ohne Passwort.',
  'zip-packed-otherwise':
    'Sie ist auf eine Art gepackt, die hier nicht gelesen wird. Pack sie als gewöhnliches ZIP.',
  'zip-member-too-large': ({ name, mostMb }) =>
    `${name} ist größer als ${mostMb} MB; das wird hier nicht geöffnet.`,
  'zip-member-swells': ({ name }) =>
    `${name} wäre ausgepackt weit größer als jede Aufnahme und jeder Text. Das wird nicht geöffnet.`,
  'zip-unpacks-too-much': ({ mostMb }) =>
    `Sie wäre ausgepackt größer als ${mostMb} MB; das wird hier nicht geöffnet.`,
  'zip-twice': ({ name }) => `Sie enthält zwei Dateien mit dem Namen ${name}.`,
  'zip-overlaps': 'Ihre Dateien liegen übereinander. Sie wird nicht geöffnet.',
  'zip-nameless': 'Sie enthält eine Datei ohne brauchbaren Namen.',
  'zip-leads-elsewhere': 'Sie enthält eine Datei, deren Name woandershin führen würde.',
  'zip-member-damaged': ({ name }) => `${name} ist darin beschädigt. Schick oder speichere sie noch einmal.`,
  'zip-member-gone': 'Sie ist nicht mehr in ihrem Archiv.',
  'no-review':
    'Diese Datei ist keine Rückmeldung von Evenfall. Wähl die Datei, die deine Lehrkraft oder dein Schüler geschickt hat.',
  'review-newer':
    'Diese Rückmeldung stammt von einer neueren Version. Lade diese Seite mit Verbindung neu, dann öffne sie noch einmal.',
  'review-unopened': ({ because }) => `Diese Rückmeldung lässt sich nicht öffnen. ${tell(because)}`,
  'review-refused': ({ because }) =>
    `Diese Rückmeldung wird nicht angenommen: ${tell(because)} Bitte noch einmal um die Datei.`,
  'review-part-too-large': ({ name }) =>
    `Diese Rückmeldung wird nicht angenommen: ${name} darin ist zu groß.`,
  'review-holds-other': 'Sie enthält eine Datei, die zu keiner Rückmeldung gehört.',
  'review-names-twice': 'Sie nennt eine ihrer Dateien zweimal.',
  'review-misses-file': 'Eine ihrer Dateien fehlt.',
  'review-no-sound': ({ name }) => `${name} darin ist kein Klang.`,
  'review-manifest': ({ place }) => `Was sie von sich sagt, ist nicht in Ordnung (${place}).`,
  'review-no-report': ({ name, place }) => `${name} ist kein Bericht, der gezeigt werden kann (${place}).`,
  'review-too-many-notes': ({ name }) => `${name} enthält mehr Töne, als jemand in einem Versuch spielt.`,
  'review-no-such-step': ({ attempt }) =>
    `Eine Bemerkung zu Versuch ${attempt} hängt an einer Stelle, die seine Übung nicht hat.`,
  'review-unwritable': ({ place }) =>
    `Diese Rückmeldung lässt sich nicht schreiben: ${place} ist nicht in Ordnung.`,
  'review-sound-too-long': 'Ein Klang ist zu lang für eine Rückmeldung. Kürze ihn, oder schick sie ohne ihn.',
  'review-too-large': 'Diese Rückmeldung ist zu groß für eine Datei. Lass den Klang einiger Versuche weg.',
  'review-for-teacher':
    'Sie enthält Versuche, die jemand an eine Lehrkraft schickt. Eine Lehrkraft öffnet sie auf der Seite „Für Lehrkräfte“.',
  'review-for-student':
    'Das ist eine Rückmeldung für eine Schülerin oder einen Schüler; geöffnet wird sie im Tagebuch.',
  'no-levels': 'Diese Datei enthält keine Stufen von Evenfall; deine sind, wie sie waren.',
  'levels-newer':
    'Diese Stufen stammen von einer neueren Version. Lade diese Seite mit Verbindung neu, dann importiere sie.',
  'no-music':
    'Sie enthält keine Noten, die hier gelesen werden: MusicXML, MIDI, ABC oder Stellen, die Evenfall geschrieben hat.',
  'music-damaged':
    'Sie ist beschädigt oder nicht so, wie solche Dateien geschrieben werden. Gib sie noch einmal aus, dann öffne sie wieder.',
  'music-newer':
    'Diese Stellen hat eine neuere Version geschrieben. Lade diese Seite mit Verbindung neu, dann öffne sie.',
  'music-entities': 'Sie legt eigene Entities fest, die keine Noten brauchen. Sie wird nicht geöffnet.',
  'music-timewise':
    'Sie ist MusicXML nach Takten, das kaum in Gebrauch ist. Gib sie nach Stimmen aus (score-partwise).',
  'music-grace': () =>
    'Sie hat Vorschlagsnoten, für die kein Zeitpunkt geschrieben steht. Nimm sie heraus oder wähl andere Takte.',
  'music-transposing':
    'Sie ist für ein transponierendes Instrument geschrieben. Gib sie aus, wie sie klingt.',
  'music-no-pitches': () =>
    'Sie enthält Noten ohne Tonhöhe, wie für Schlagzeug. Ein Klavier kann sie nicht spielen.',
  'music-no-notes': 'Es sind keine Noten darin, oder nicht in diesen Takten.',
  'music-no-beats': 'Ihre Zeiten stehen in Filmbildern und nicht in Schlägen. Gib sie in Schlägen aus.',
  'music-between-keys': () =>
    'Sie hat Töne zwischen den Tasten eines Klaviers, etwa Vierteltöne. Nimm sie heraus oder wähl andere Takte.',
  'music-endings': () =>
    'Sie hat einen ersten und einen zweiten Schluss („Haus 1“ und „Haus 2“), von denen jedes Mal einer gespielt wird. Wähl Takte mit einem davon.',
  'music-one-moment':
    'Alles darin wird zugleich angeschlagen; eine Stelle braucht mindestens zwei Zeitpunkte.',
  'music-beyond-keys': 'Sie geht über die Tasten eines Klaviers hinaus.',
  'music-unplayable':
    'Sie ist keine Stelle für Klavier: Es sind mehr als zehn Tasten zugleich, oder mehr Noten oder längere Takte, als eine Stelle haben kann.',
  'music-too-large': ({ mostMb }) => `Sie ist größer als ${mostMb} MB; das wird hier nicht geöffnet.`,
  'music-too-long': ({ bars, most }) =>
    `Sie hat ${bars} Takte; eine Stelle hat bis zu ${most}. Sag, welche Takte.`,
  'music-no-bars': ({ from, to, bars }) =>
    `Die Takte ${from} bis ${to} gibt es darin nicht; sie hat ${bars}.`,
  'music-staves': ({ staves }) => `Sie hat ${staves} Systeme; eine Stelle hat eines oder zwei.`,
  'no-journal':
    'Diese Datei ist kein Tagebuch von Evenfall; deines ist, wie es war. Wähl eine, die hier gesichert wurde.',
  'journal-damaged': 'Diese Datei ist kein Tagebuch von Evenfall, oder sie ist von Anfang an beschädigt.',
  'journal-too-much': 'Diese Datei enthält mehr, als ein Tagebuch enthalten kann.',
  'journal-newer':
    'Dieses Tagebuch stammt von einer neueren Version. Lade diese Seite mit Verbindung neu, dann lies es ein.',
  'journal-breaks-off': 'Die Datei bricht ab oder ist beschädigt; was davor kam, steht im Tagebuch.',
  'journal-attempt': ({ whenMs, place }) =>
    `${attemptOf(whenMs)} kam nicht dazu: ${partOf(place)} ist nicht in Ordnung.`,
  'journal-no-sound': ({ whenMs }) =>
    `${attemptOf(whenMs)} steht ohne seinen Klang da: Der lässt sich nicht lesen.`,
  'journal-too-large': ({ whenMs }) => `${attemptOf(whenMs)} kam nicht dazu: Er ist zu groß.`,
  'journal-other': 'Etwas in der Datei, das zu keinem Tagebuch gehört, kam nicht dazu.',
  'levels-damaged': ({ place }) =>
    `Was in der Datei von den Stufen steht, ist nicht in Ordnung (${place}); deine sind, wie sie waren.`,
  'journal-and-more': ({ more }) => `… und ${more} mehr.`,
  'microphone-denied':
    'Das Mikrofon ist nicht erlaubt. Erlaub es dieser Seite im Browser (das Zeichen neben der Adresse) und in den ' +
    'Einstellungen des Geräts, dann versuch es noch einmal. Du kannst auch eine Aufnahme öffnen.',
  'microphone-none': 'Es wurde kein Mikrofon gefunden. Schließ eines an, oder öffne eine Aufnahme.',
  'microphone-busy':
    'Das Mikrofon wird von einem anderen Programm oder einer anderen Seite benutzt. Schließ sie, dann versuch es noch einmal.',
  'microphone-unsupported':
    'Dieser Browser kann hier nicht aufnehmen. Öffne die Seite über https in einem aktuellen Browser, oder öffne eine Aufnahme.',
  'microphone-mute':
    'Der Ton dieses Browsers startet nicht. Manche starten ihn nur mit Lautsprecher oder Kopfhörer: Schließ einen an und versuch es dann noch einmal.',
  'microphone-gone':
    'Das Mikrofon ist weg: ausgesteckt oder vom System genommen. Was bis dahin zu hören war, ist aufgehoben. Schließ es wieder an, dann fang wieder an zuzuhören.',
  'microphone-silenced':
    'Eine andere App hat das Mikrofon genommen. Das Zuhören geht weiter, wenn sie es zurückgibt.',
  'microphone-asleep':
    'Das Zuhören hat aufgehört, weil der Bildschirm gesperrt wurde oder ein Anruf kam. Berühr die Seite, dann geht es weiter.',
  'microphone-back': 'Das Mikrofon ist wieder da; das Zuhören geht weiter.',
  'connect-again': 'Schließ es wieder an, dann nimm auf.',
  'sound-lost': ({ lostSec }) => tellNotice({ notice: 'sound-lost', lostSec }, GERMAN),
  'no-room': ({ keeper }) => NO_ROOM[keeper],
  'used-by-newer': ({ keeper }) =>
    `Eine neuere Version dieser Seite war schon hier und führt ${KEPT[keeper]} anders. Lade diese Seite mit Verbindung neu.`,
  'keeps-nothing': ({ keeper }) => KEEPS_NOTHING[keeper],
  'not-kept': ({ keeper, because }) => `${NOT_KEPT[keeper]}: ${tell(because)}`,
  'other-window-older':
    'Ein anderes Fenster hat eine ältere Version dieser Seite offen. Schließ es, dann öffne diese Seite noch einmal.',
  'listening-not-loaded': 'Der Teil der Seite, der zuhört, ließ sich nicht laden.',
  'sorting-not-loaded':
    'Der Teil der Seite, der zuhört, ließ sich nicht laden, oder der Speicher reichte nicht.',
  'analysis-called-off': 'Das Auswerten wurde abgebrochen.',
  'sorting-called-off': 'Das Sortieren wurde abgebrochen.',
  'no-picture': 'Dieser Browser konnte das Bild nicht machen.',
  'not-encoded': 'Der Klang ließ sich nicht packen.',
  'page-closed': 'Die Seite wurde geschlossen.',
  'helper-not-started': 'Der Helfer ließ sich nicht starten.',
  'helper-broke-down':
    'Das Programm ist daran gescheitert: Vielleicht ist sie zu lang für den Speicher dieses Rechners.',
  'not-listened-to': 'Sie ließ sich nicht anhören, durch einen Fehler dieser Seite.',
  'no-end': `Sie kam an kein Ende und wurde aufgegeben: Sie ist beschädigt oder von einer Art, an der dieses Programm hängen bleibt. Schick sie noch einmal. ${CONVERT}`,
  'not-worked-out': ({ because }) => `Dieser Versuch ließ sich nicht auswerten. ${tell(because)}`,
  'file-not-made': ({ because }) => `Die Datei ließ sich nicht machen. ${tell(because)}`,
  'not-passed-on': ({ because }) =>
    `Das System konnte sie nicht weitergeben. Sichere die Datei und schick sie selbst. (${tell(because)})`,
  'not-reported': ({ notice }) => tellNotice(notice, GERMAN),
  'system-refuses': ({ code }) => SYSTEM[code] ?? `Sie ließ sich nicht lesen (${code}).`,
  'own-fault':
    'Das Auswerten ist an einem Fehler dieses Programms gescheitert. NODE_DEBUG=evenfall vor dem Befehl zeigt, wo.',
  unforeseen: ({ detail }) => `Etwas ging schief, das nicht vorgesehen war: ${detail}`,
});
