"""Batches for the closer look: clips of both hands, the same hands apart where they are known, questions. Plain Python."""

import math
import random

import numpy as np

from sound import KEYS, LOWEST, RATE
from sound.bank import WEIGHT
from sound.noises import noises

from .exercises import TWO_HANDS, perform, write
from .questions import WRITTEN, questions

SECONDS = 8.0
# the bit of a clip that says that dampers are heard in it; bit n: the sampled piano number n
DAMPERS = 1 << 40
# columns of Batch.asked
CLIP, AT, MIDI, STRUCK, LATE, KIND, BELOW, CENTS, HAND, TWIN, UNTIL, OTHER, OWN, VARIED = range(14)


class Piano:
    """One piano as one player meets it: which rows of the bank sound, how loud and how well tuned each key is."""

    def __init__(self, r, plan, real, share_real):
        self.plan, self.real = plan, r.random() < share_real
        if self.real:
            name = r.choices(real, [WEIGHT.get(one, 1.0) for one in real])[0]
            self.number = plan["names"].index(name)
            self.layers = int(plan["layer_counts"][self.number])
            self.voicing = r.randrange(plan["voicings"]) if r.random() < 0.7 else 0
        else:
            self.number, self.layers = r.randrange(plan["synthetic"]), plan["synthetic_layers"]
        self.cents = r.gauss(0, 6)
        scatter = r.choice([0.5, 1.5, 3.0, 6.0])
        self.stray = [r.gauss(0, scatter) for _ in range(KEYS)]
        self.loud = [r.gauss(0, 1.0) for _ in range(KEYS)]
        self.shift = r.choice([-3, -2, -1, 1, 2, 3]) if r.random() < 0.3 else 0
        self.varied = r.random() < 0.7  # no two strikes of a string sound alike
        self.damping = r.uniform(0.04, 0.25)
        self.blow = r.uniform(0, self.layers)

    def row(self, r, midi, level):
        """A strike → the row that sounds, and its own pitch."""
        stray = r.gauss(0, 0.6) if self.varied else 0
        layer = min(self.layers - 1, max(0, int(self.blow + level / 4 + stray)))
        key = min(KEYS - 1, max(0, midi - LOWEST + self.shift))
        plan = self.plan
        if not self.real:
            return plan["first_synthetic"] + (self.number * KEYS + key) * self.layers + layer, key + LOWEST
        row = int(plan["table"][self.number, key, layer])
        strike = r.randrange(plan["strikes"]) if self.varied else 0
        return row + (self.voicing * plan["strikes"] + strike) * plan["sampled"], float(plan["pitch"][row])

    def sound(self, r, clip, events):
        """Rows for the renderer."""
        out = []
        for event in events:
            row, pitch = self.row(r, event.midi, event.level)
            key = event.midi - LOWEST
            speed = 2 ** ((event.midi - pitch + (self.cents + self.stray[key]) / 100) / 12)
            gain = 10 ** ((event.level + self.loud[key]) / 20)
            damped = (event.off - event.on) * RATE if event.midi < 90 else 1e9
            fall = math.log(10) / (self.damping * (1 + max(0, (60 - event.midi) / 24)) * RATE)
            out.append((clip, row, event.on * RATE, speed, gain, damped, fall))
        return out


class Maker:
    """Batches without end. `real`: names of the pianos to draw from; `share_real`: how often a sampled one is drawn;
    `apart`: share of clips of both hands of which hands apart are known; `clips` and `most` questions a batch."""

    def __init__(self, plan, real, clips, most, seed, share_real=0.75, apart=0.6):
        self.plan, self.real, self.clips, self.most = plan, real, clips, most
        self.share_real, self.apart = share_real, apart
        self.r = random.Random(seed)

    def batch(self):
        """→ dict of arrays: events (N,7), pedal, place (clips and their hands apart), asked (Q,14), marks (Q,WRITTEN) uint8,
        scalars (Q,3), alone (M,4): clip, sample, midi, cents of the moments of hands apart; sounds (clips,): bits of what was
        heard in a clip and its hands apart; and for strays.py struck (N,4): clip, s, midi, whether it answers a written note;
        steps: by clip (s, {midi: hand}); cents by clip"""
        self.events, self.pedal, self.place = [], [], list(range(self.clips))
        self.alone, self.extra, self.sounds = [], [], [0] * self.clips
        self.struck, self.steps, self.cents = [], [], []
        groups = []
        for clip in range(self.clips):
            groups += self._clip(clip)
        self.r.shuffle(groups)
        asked = []
        for number, group in enumerate(groups):
            if len(asked) + len(group) > self.most:
                break
            asked += [(row[:TWIN] + (number,) + row[TWIN + 1 :], marks, scalars) for row, marks, scalars in group]
        for clip, place in self.extra:
            self.place.append(place)
        marks = np.zeros((len(asked), WRITTEN - 3), np.uint8)
        for i, (_, which, _) in enumerate(asked):
            marks[i, which] = 1
        return dict(
            events=np.array(self.events, np.float64).reshape(-1, 7),
            pedal=np.array(self.pedal, np.float32),
            place=np.array(self.place, np.int64),
            asked=np.array([row for row, _, _ in asked], np.float64).reshape(-1, 14),
            marks=marks,
            scalars=np.array([scalars for _, _, scalars in asked], np.float32).reshape(-1, 3),
            alone=np.array(self.alone, np.float64).reshape(-1, 4),
            sounds=np.array(self.sounds, np.int64),
            struck=np.array(self.struck, np.float64).reshape(-1, 4),
            steps=self.steps,
            cents=self.cents,
        )

    def _clip(self, clip):
        r = self.r
        line = write(r, SECONDS)
        played = perform(r, line, SECONDS)
        piano = Piano(r, self.plan, self.real, self.share_real)
        self._sound(clip, clip, piano, played)
        heard = piano.cents + r.gauss(0, 2.0)
        self.struck += [(clip, event.on, event.midi, event.answers) for event in played.events]
        self.steps.append([(step.time, step.hands) for step in played.steps])
        self.cents.append(heard)
        known = self._hands_apart(clip, line, piano, heard) if line.kind in TWO_HANDS else {}
        groups = {}
        for index, one in enumerate(questions(r, played, SECONDS)):
            other = self._alone(known, 1 - one["hand"], one["other"], one["midi"], heard)
            own = self._alone(known, one["hand"], one["own"], one["midi"], heard)
            row = (clip, one["sec"] * RATE, one["midi"], one["struck"], one["late"], one["kind"], one["below"])
            row += (heard + r.gauss(0, 1.0), one["hand"], 0, one["until"], other, own, piano.varied)
            groups.setdefault(one["twin"] or index, []).append((row, one["marks"], one["scalars"]))
        return list(groups.values())

    def _sound(self, belongs_to, clip, piano, played):
        r = self.r
        self.events += piano.sound(r, clip, played.events)
        self.sounds[belongs_to] |= 1 << piano.number if piano.real else 0
        first = self.plan["first_hit"]
        plain = [(event.on, event.midi, event.level, event.off) for event in played.events]
        for at, name, which, level, speed in noises(r, SECONDS, plain, played.pedal):
            self.events.append((clip, first[name] + which, at * RATE, speed, 10 ** (level / 20), 1e9, 0.0))
            self.sounds[belongs_to] |= DAMPERS if name == "release" else 0
        while len(self.pedal) <= clip:
            self.pedal.append(0.0)
        self.pedal[clip] = float(played.pedal)

    def _hands_apart(self, clip, line, piano, heard):
        """Plays the hands alone → {hand: {keys of a step: its moments in a clip}}. Now and then the device has been moved, or
        it is another piano."""
        r, out = self.r, {}
        if r.random() >= self.apart:
            return out
        for hand in r.choice(((0, 1), (0, 1), (0, 1), (0,), (1,))):
            alone = self.clips + len(self.extra)
            moved = r.random() < 0.08
            self.extra.append((alone, alone if moved else clip))
            other = Piano(r, self.plan, self.real, self.share_real) if r.random() < 0.04 else piano
            played = perform(r, line, SECONDS, only=hand)
            self._sound(clip, alone, other, played)
            moments = {}
            for step in played.steps:
                onsets = [played.events[i].on for i in step.mine]
                sec = sum(onsets) / len(onsets) + r.gauss(0, 0.006)
                if 0.15 <= sec <= SECONDS - 0.35:
                    moments.setdefault(tuple(sorted(step.hands)), []).append((alone, sec * RATE))
            out[hand] = {keys: r.choice(some) for keys, some in moments.items()}
        return out

    def _alone(self, known, hand, keys, midi, heard):
        """The number of the look at a key while these keys were struck by one hand alone; −1: not known."""
        moment = known.get(hand, {}).get(keys)
        if moment is None:
            return -1
        self.alone.append((*moment, midi, heard + self.r.gauss(0, 1.0)))
        return len(self.alone) - 1
