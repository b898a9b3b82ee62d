"""Short noises beside playing: knocks, dishes, clicks, keys and dampers, beeps, bursts, and the releases of a real grand."""

import numpy as np
import torch

from . import KEYS, RATE, ROW

# class → rows of the bank
HITS = dict(knock=120, dish=120, click=60, key=120, beep=60, burst=80, release=KEYS)
LENGTH = int(1.2 * RATE)
BEEPS = (440, 523.25, 800, 880, 1000, 1046.5, 1200, 1568, 1760, 2000, 2093)


def first_rows(start):
    """Class → its first row in the bank."""
    out = {}
    for name, count in HITS.items():
        out[name] = start
        start += count
    return out


def hit_bank(device, releases, seed=9):
    """Rows in the order of HITS, onset at sample 0; synthetic ones have a note's level in their loudest 50 ms."""
    chance = np.random.default_rng(seed)
    rows = []
    for name, count in HITS.items():
        if name != "release":
            rows += [_row(_make(name, chance)) for _ in range(count)]
    out = torch.tensor(np.array(rows) * 32767, device=device).short()
    real = np.pad(releases, ((0, 0), (0, ROW - releases.shape[1])))
    return torch.cat([out, torch.tensor(real, device=device)])


def levelled_hit(x):
    """As loud as a note of the bank in its loudest 50 ms."""
    power = np.cumsum(np.concatenate([[0], x**2]))
    level = np.sqrt((power[1102:] - power[:-1102]).max() / 1102)
    return np.clip(x * 0.08 / level, -0.99, 0.99)


def _row(x):
    t = np.arange(LENGTH) / RATE
    return np.pad(levelled_hit(x) * np.clip((1.2 - t) / 0.1, 0, 1), (0, ROW - LENGTH))


def _make(name, chance):
    t = np.arange(LENGTH) / RATE
    hz = np.arange(LENGTH // 2 + 1) * RATE / LENGTH
    noise = chance.normal(size=LENGTH)

    def low(x, top):
        return np.fft.irfft(np.fft.rfft(x) / (1 + (hz / top) ** 2), LENGTH)

    def band(x, bottom, top):
        up = (hz / bottom) ** 2
        return np.fft.irfft(np.fft.rfft(x) * up / (1 + up) / (1 + (hz / top) ** 2), LENGTH)

    def modes(count, low_hz, high_hz, low_sec, high_sec):
        f = np.exp(chance.uniform(np.log(low_hz), np.log(high_hz), count))
        d = np.exp(chance.uniform(np.log(low_sec), np.log(high_sec), count))
        a = np.exp(chance.normal(0, 0.8, count))
        parts = zip(f, d, a)
        return sum(A * np.sin(2 * np.pi * F * t + chance.uniform(0, 6.28)) * np.exp(-t / D) for F, D, A in parts)

    u = chance.uniform
    if name == "knock":
        body = modes(chance.integers(3, 9), 50, chance.choice([300, 900]), 0.008, 0.09)
        return body + u(0.1, 2) * low(noise, u(150, 2500)) * np.exp(-t / u(0.003, 0.03)) * 3
    if name == "dish":
        body = modes(chance.integers(3, 12), chance.choice([400, 900, 1500]), 8500, 0.02, chance.choice([0.1, 0.4]))
        return body + u(0, 0.8) * noise * np.exp(-t / u(0.001, 0.01))
    if name == "click":
        tone = np.sin(2 * np.pi * np.exp(u(6.2, 8.4)) * t) * u(0, 1)
        return (tone + noise * u(0.05, 0.6)) * np.exp(-t / np.exp(u(-7.5, -3.6)))
    if name == "key":
        body = modes(chance.integers(2, 7), 40, chance.choice([250, 700]), 0.01, 0.06) * u(0.2, 1)
        felt = low(noise, u(400, 5000)) * np.exp(-t / u(0.004, 0.04)) * (1 - np.exp(-t / u(0.0003, 0.01)))
        return body + 2 * felt
    if name == "beep":
        f = chance.choice(BEEPS) * 2 ** (chance.normal(0, 0.05) * (chance.random() < 0.5))
        d = u(0.008, 0.12)
        tone = sum(a * np.sin(2 * np.pi * f * h * t) for h, a in ((1, 1), (2, u(0, 0.5)), (3, u(0, 0.3))))
        fall = np.exp(-t / d * 2) if chance.random() < 0.5 else np.clip((d - t) / 0.003, 0, 1)
        return tone * fall * np.clip(t / 0.001, 0, 1)
    bottom, d = np.exp(u(5.5, 8.3)), u(0.01, 0.15)
    burst = band(noise, bottom, min(9000, bottom * u(1.5, 4))) * np.clip(t / u(0.001, 0.04), 0, 1) * np.exp(-t / d)
    return burst + (modes(4, 150, 3000, 0.01, 0.06) * u(0, 1) if chance.random() < 0.5 else 0)
