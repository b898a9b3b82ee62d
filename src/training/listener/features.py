"""What the blind listener sees: three spectra on 390 log bins, 36 an octave (torch).

Frame t is centred on sample 512 t; samples outside the recording are zero."""

import numpy as np
import torch
import torch.nn.functional as F

from sound import LOWEST, RATE

PER_OCTAVE = 36
BELOW = 40  # log bins below the centre of the lowest key
BINS = 390
HOP = 512
LEAD = 512  # zeros put before the sound so that frames just before sample 0 exist
SPECTRA = ((4096, 256), (1024, 256), (256, 128))  # window, hop


def bin_hz(cents=0.0):
    steps = (np.arange(BINS) - BELOW) / PER_OCTAVE
    return 440 * 2 ** ((LOWEST - 69) / 12 + steps + cents / 1200)


def filters(size, cents=0.0):
    """(size/2+1, BINS) triangles on the power spectrum, half a width the larger of one log bin and one bin; sum 1."""
    centre, hz = bin_hz(cents), np.arange(size // 2 + 1) * RATE / size
    half = np.maximum(centre * (2 ** (1 / PER_OCTAVE) - 1), RATE / size)
    weights = np.maximum(0, 1 - np.abs(hz[None] - centre[:, None]) / half[:, None])
    weights /= np.maximum(weights.sum(1, keepdims=True), 1e-9)
    weights[centre > RATE / 2 * 0.98] = 0
    return torch.tensor(weights.T.copy(), dtype=torch.float32)


_kept = {}


def _once(name, make):
    if name not in _kept:
        _kept[name] = make()
    return _kept[name]


def spectrum(y, size, hop):
    """(B, n) → (B, frames, BINS); −90 dB is the floor, a sine of full scale is 3"""
    window = _once(("window", size, y.device), lambda: torch.hann_window(size, device=y.device) / (size / 4))
    bank = _once(("filters", size, y.device), lambda: filters(size).to(y.device))
    x = torch.stft(y, size, hop, window=window, center=True, pad_mode="constant", return_complex=True)
    power = (x.real**2 + x.imag**2).transpose(1, 2)
    return (torch.log10(power @ bank + 1e-9) + 6) / 2


def features(y):
    z = F.pad(y, (LEAD, LEAD))
    return [spectrum(z, size, hop) for size, hop in SPECTRA]


def frames(length):
    return length // HOP + 1


def level(y):
    """Active RMS → −20 dBFS, as the engine levels what it listens to."""
    power = F.avg_pool1d(y.pow(2)[:, None], 2205, 1102)[:, 0]
    active = (power > 0.0025 * power.max(1, keepdim=True)[0]).float()
    mean = (power * active).sum(1, keepdim=True) / active.sum(1, keepdim=True).clamp(min=1)
    return y * (0.1 / mean.sqrt().clamp(min=1e-5))
