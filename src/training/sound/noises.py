"""When which noise sounds beside a performance: plain Python, for worker processes."""

import math

from .hits import HITS


def noises(r, seconds, events, pedal):
    """events: (on, midi, level, off); → [(time s, class, which row of it, level dB re a note, speed)]"""
    out = []

    def chance(probability):
        return r.random() < (probability if events else 2 * probability)

    def strew(name, rate, low, high, one=False):
        """Now and then, at random; `one`: always the same row."""
        t, which, base = -r.expovariate(rate), r.randrange(HITS[name]), r.uniform(low, high)
        while True:
            t += r.expovariate(rate)
            if t > seconds:
                return
            row = which if one else r.randrange(HITS[name])
            out.append((t, name, row, base + r.gauss(0, 2.5), 1.0 if one else r.uniform(0.75, 1.35)))

    if chance(0.2):
        strew("knock", math.exp(r.uniform(-1.2, 1.4 if events else 2)), -22, r.choice([-6, 0, 9]), r.random() < 0.5)
    if chance(0.16):
        strew("dish", math.exp(r.uniform(-1.2, 1.0)), -26, r.choice([-8, 0, 5]))
    if chance(0.06):
        strew("click", math.exp(r.uniform(-1.5, 1.0)), -20, 6)
    if chance(0.09):
        strew("burst", math.exp(r.uniform(-1.0, 1.8)), -26, 0)
    if chance(0.15):
        out += _metronome(r, seconds)
    if r.random() < 0.45:
        out += _action(r, events)
    if r.random() < 0.5:
        out += _releases(r, events)
    if pedal and r.random() < 0.5:
        strew("knock", r.uniform(0.3, 1.0), -30, -10, True)
    return out


def _metronome(r, seconds):
    name = r.choice(["click", "click", "beep", "beep", "knock"])
    beat = r.randrange(HITS[name])
    first = r.randrange(HITS[name]) if r.random() < 0.4 else beat
    period, level, bar = r.uniform(0.28, 1.2), r.uniform(-22, 6), r.choice([2, 3, 4, 4, 6])
    out, t, count = [], r.uniform(-0.2, period), 0
    while t < seconds:
        downbeat = count % bar == 0
        out.append((t, name, first if downbeat else beat, level + (3 if downbeat else 0), 1.0))
        t += period
        count += 1
    return out


def _action(r, events):
    """Keys before the strike, dampers and keys at their release."""
    level, which = r.uniform(-42, -16), [r.randrange(HITS["key"]) for _ in range(4)]
    ahead, out = r.uniform(0.004, 0.03), []
    for on, _, _, off in events:
        if r.random() < 0.7:
            out.append(
                (off + r.uniform(-0.01, 0.02), "key", r.choice(which), level + r.gauss(0, 4), r.uniform(0.8, 1.25))
            )
        if r.random() < 0.4:
            before = on - ahead * r.random()
            out.append((before, "key", r.choice(which), level - 4 + r.gauss(0, 4), r.uniform(0.8, 1.25)))
    return out


def _releases(r, events):
    """Dampers that fall on sounding strings, 15 to 38 dB below the strike, louder where strings are long."""
    level, out = r.uniform(-38, -20), []
    for _, midi, own, off in events:
        if midi < 90:
            loud = level + own + max(0, (60 - midi) / 6) + r.gauss(0, 2)
            out.append((off + r.uniform(-0.005, 0.03), "release", min(midi - 24, HITS["release"] - 1), loud, 1.0))
    return out
