"""Speech to train with, and speech kept for evaluation: recorded voices, and a synthesiser that counts and talks."""

import glob
import os
import random
import subprocess

import numpy as np

from sound import RATE
from sound.coding import decoded, encode

VOICES = ("en_US_f_Allison", "es_MX_f_Allison", "ru_RU_f_IvrvoiceRU")
VOICES_KEPT = ("fr_CA_f_June", "it_IT_m_Carlo")
SAID = {
    "en": "One, two, three, four. One and two and three and four and. Please try that passage once more, slowly "
    "this time, and listen to the thumb. She sells six thick thistle sticks. Right, one, two, three, four, off we go, "
    "keep it steady, that is better, try to relax the wrist, good. Five, six, seven, eight.",
    "de": "Eins, zwei, drei, vier. Eins und zwei und drei und vier und. Bitte noch einmal von vorn, aber langsamer und "
    "leiser. Zwei, drei, vier, und los. Der Daumen klingt zu laut, pass auf, so ist es schon viel besser.",
    "fr": "Un, deux, trois, quatre, un et deux et trois et quatre et. Encore une fois depuis le debut, plus doucement.",
}
SPOKEN = (
    ("en-gb", "en", 30, 150),
    ("en-us+f3", "en", 60, 170),
    ("de", "de", 45, 150),
    ("en+m3", "en", 20, 190),
    ("de+f2", "de", 60, 130),
    ("fr", "fr", 70, 160),
)


def levelled(speech):
    speech = speech.astype(float)
    return np.clip(speech * 2500 / np.sqrt(np.mean(speech**2) + 1), -32000, 32000).astype(np.int16)


def prompts(folder, seconds, seed):
    """Recorded prompts of one voice in random order with pauses."""
    chance = random.Random(seed)
    files = sorted(f for f in glob.glob(folder + "/**/*.g722", recursive=True) if "silence" not in f)
    chance.shuffle(files)
    out, count = [], 0
    for path in files:
        speech = decoded(path, RATE)
        if len(speech) < 8000:
            continue
        out += [levelled(speech), np.zeros(int(chance.uniform(0.05, 0.6) * RATE), np.int16)]
        count += len(out[-1]) + len(out[-2])
        if count > seconds * RATE:
            break
    return np.concatenate(out)[: seconds * RATE] if out else np.zeros(0, np.int16)


def spoken(folder, voice, language, pitch, speed):
    path = folder + "/spoken.wav"
    command = ["espeak-ng", "-v", voice, "-p", str(pitch), "-s", str(speed), "-w", path, SAID[language]]
    subprocess.run(command, check=True)
    speech = levelled(decoded(path, RATE))
    os.remove(path)
    return speech


def gather_talk(debian, folder):
    place = f"{debian}/usr/share/asterisk/sounds"
    train = [prompts(f"{place}/{voice}", 45, i) for i, voice in enumerate(VOICES)]
    train += [spoken(folder, *voice) for voice in SPOKEN]
    kept = [prompts(f"{place}/{voice}", 45, 9 + i) for i, voice in enumerate(VOICES_KEPT)]
    missing = [] if len(train[0]) else ["recorded voices (asterisk-core-sounds-*): talk is synthetic only"]
    train, kept = np.concatenate(train), np.concatenate(kept)
    kept = kept if len(kept) else train[-45 * RATE :]
    np.savez(folder + "/talk.npz", split=len(train))
    encode(np.concatenate([train, kept])[None], folder + "/talk.xz")
    print(f"talk: {len(train) / RATE:.0f} s and {len(kept) / RATE:.0f} s kept out")
    return missing
