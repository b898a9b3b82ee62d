"""Synthesised pianos: stiff strings in pairs, each piano with its own balance, decay, tuning, knock and hiss."""

import numpy as np
import torch
import torch.nn.functional as F

from . import KEYS, LEAD, LOWEST, RATE, ROW

PARTIALS = 40
CHUNK = 64


def synth_bank(pianos, device, layers=2, seed=None):
    """→ rows int16 and the onset sample of each; row (piano · KEYS + key) · layers + layer"""
    chance = np.random.default_rng(seed)
    rows, onsets = [], []
    for _ in range(pianos):
        one, on = _piano(chance, device, layers)
        rows.append(one)
        onsets.append(on)
    return torch.cat(rows), torch.cat(onsets)


def _piano(chance, device, layers):
    def tensor(value):
        return torch.tensor(value, dtype=torch.float32, device=device)

    strings = {name: tensor(value) for name, value in _strings(chance, layers).items()}
    kinds = _character(chance)
    keys = np.repeat(np.arange(LOWEST, LOWEST + KEYS), layers)
    time = torch.arange(ROW, device=device) / RATE - LEAD / RATE
    rows, onsets = [], []
    for start in range(0, len(keys), CHUNK):
        part = slice(start, min(start + CHUNK, len(keys)))
        one = {name: value[part] for name, value in strings.items()}
        y = _noisy(_sum(one, time), time, kinds, chance, tensor)
        on = _onsets(y, tensor(np.where(keys[part] >= 48, 200.0, 60.0))[:, None])
        total = y.pow(2).cumsum(1)
        level = torch.gather(total, 1, torch.stack([on, on + 6615], 1))
        level = ((level[:, 1] - level[:, 0]) / 6615).clamp(min=1e-12).sqrt()
        rows.append((y * (0.08 / level)[:, None]).clamp(-0.99, 0.99).mul(32767).short())
        onsets.append(on)
    return torch.cat(rows), torch.cat(onsets)


def _character(chance):
    """What a piano's noises are like: knock, hiss after the blow, and lasting hiss, dB below the note."""
    return dict(knock=chance.uniform(-42, -12), blow=chance.uniform(-32, -12), floor=chance.uniform(-75, -38))


def _strings(chance, layers):
    """(keys · layers, PARTIALS) amplitudes, angular frequencies, phases and decays of one piano's strings."""
    keys = np.repeat(np.arange(LOWEST, LOWEST + KEYS), layers)
    count = len(keys)
    shape = (count, PARTIALS)
    partial = np.arange(1, PARTIALS + 1)[None]
    stretch, scatter = chance.uniform(0.3, 1.6), chance.choice([1.0, 3.0, 7.0])
    stray = stretch * ((keys - 66) / 40.0) ** 3 * 12 + chance.normal(0, scatter, count)
    first = (440 * 2 ** ((keys - 69) / 12 + stray / 1200))[:, None]
    stiff = np.logaddexp(0.0926 * keys - 13.64, -0.0847 * keys - 5.82) + chance.normal(0, 0.5)
    stiff = np.exp(stiff + chance.normal(0, 0.15, count))[:, None]
    hz = partial * first * np.sqrt(1 + stiff * partial**2)
    # levels: where the hammer strikes, a body of broad resonances, a fall with height, key by key chance
    strike = chance.uniform(0.09, 0.16) + 0.02 * chance.normal(size=(count, 1))
    comb = 20 * np.log10(np.abs(np.sin(np.pi * partial * strike)) + 0.14)
    body = sum(
        chance.normal(0, 4) * np.exp(-0.5 * ((np.log2(hz) - chance.uniform(4, 13.5)) / chance.uniform(0.1, 0.8)) ** 2)
        for _ in range(8)
    )
    bright = np.tile(chance.uniform(-5, 0, layers), KEYS) + chance.normal(0, 1, count)
    tilt = (chance.uniform(5, 14) - bright[:, None]) * np.log2(partial) * (0.5 + 0.5 * (keys[:, None] - 20) / 60)
    db = comb + body - tilt - np.log2(1 + hz / chance.uniform(800, 3000)) * chance.uniform(2, 8)
    db += chance.normal(0, chance.uniform(0.5, 3.5), shape) - 10 * np.log10(1 + (chance.uniform(40, 260) / hz) ** 4)
    fall = chance.uniform(0.4, 1.8) * 14 * 2 ** (-(keys[:, None] - 36) / 14)
    fall = np.clip(fall * partial ** -chance.uniform(0.05, 0.6) * np.exp(chance.normal(0, 0.35, shape)), 0.15, 25)
    unison = chance.choice([0.15, 0.4, 1.0, 4.0], p=[0.35, 0.35, 0.2, 0.1])
    turns = [hz * 2 ** (chance.normal(0, unison, shape) / 1200) * 2 * np.pi for _ in range(2)]
    rise = 0.0045 * 2 ** (-(keys - 60) / 24) * np.exp(chance.normal(0, 0.4, count))
    return dict(
        amplitude=10 ** (db / 20) * (hz < chance.uniform(6000, 11000)),
        turn=turns[0],
        other=turns[1],
        phase=chance.uniform(0, 6.28, shape),
        phase2=chance.uniform(0, 6.28, shape),
        decay=6.91 / fall,
        slow=6.91 / fall / chance.uniform(2, 5, shape),
        mix=10 ** (chance.uniform(-26, -4, shape) / 20),
        rise=np.clip(rise, 0.0005, 0.014)[:, None],
    )


def _sum(strings, time):
    y = torch.zeros(len(strings["rise"]), ROW, device=time.device)
    since = time.clamp(min=0)[None]
    for j in range(PARTIALS):
        one = {name: value[:, j : j + 1] for name, value in strings.items() if name != "rise"}
        pair = torch.sin(one["turn"] * time + one["phase"]) + 0.7 * torch.sin(one["other"] * time + one["phase2"])
        fall = torch.exp(-one["decay"] * since) * (1 - one["mix"]) + one["mix"] * torch.exp(-one["slow"] * since)
        y += one["amplitude"] * pair * fall
    return y * (1 - torch.exp(-((since / strings["rise"]) ** 1.5))) * (time >= 0)


def _noisy(y, time, kinds, chance, tensor):
    """The string with the knock of the key, the hammer's hiss and the recording's own."""
    count, device = len(y), y.device
    level = y[:, :6000].pow(2).mean(1, keepdim=True).sqrt()

    def column(value):
        return tensor(value)[:, None]

    def noise(size, low, high):
        spectrum = torch.fft.rfft(torch.randn(count, size, device=device))
        hz = torch.arange(spectrum.shape[1], device=device) * RATE / size
        top = column(np.exp(chance.uniform(np.log(low), np.log(high), count)))
        z = torch.fft.irfft(spectrum / (1 + (hz / top) ** 2) * (hz / (hz + 80)), size)
        return z / z.std(1, keepdim=True)

    def loud(centre, spread):
        return level * column(10 ** ((centre + chance.normal(0, spread, count)) / 20))

    short = ROW // 16 * 2
    # the knock comes up to 8 ms before the tone
    since = time[:short][None] - column(chance.uniform(-0.008, 0.003, count))
    knock = (since > 0) * torch.exp(-since.clamp(min=0) / column(chance.uniform(0.006, 0.05, count)))
    y[:, :short] += noise(short, 150, 2500) * knock * loud(kinds["knock"] + 8, 4)
    fall = column(np.exp(chance.uniform(-1.9, 1.0, count)))
    size = ROW // 2 * 2
    after = (time >= -0.0005) * torch.exp(-time.clamp(min=0) * 6.9 / fall)
    y[:, :size] += noise(size, 300, 4000) * after[:, :size] * loud(kinds["blow"], 3)
    y[:, :size] += noise(size, 100, 6000) * loud(kinds["floor"], 2)
    return y


def _onsets(y, high_pass):
    """First millisecond within 30 dB of the loudest of 0.3 s, high-passed: the definition of the sampled bank."""
    size = 16384
    ramp = 1 - torch.arange(size, device=y.device) / size
    spectrum = torch.fft.rfft(y[:, :size] * ramp)
    over = (torch.arange(spectrum.shape[1], device=y.device) * RATE / size / high_pass) ** 4
    z = torch.fft.irfft(spectrum * over / (1 + over), size)[:, : int(0.3 * RATE)]
    level = F.avg_pool1d(z.pow(2)[:, None], 23, 1, 11)[:, 0].sqrt()
    return (level >= level.max(1, keepdim=True)[0] * 10**-1.5).float().argmax(1)
