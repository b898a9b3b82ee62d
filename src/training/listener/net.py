"""The blind listener's network: the same weights at every key (torch). Layout inside: (channel, frame, clip, key)."""

import math

import torch
import torch.nn as nn
import torch.nn.functional as F

from sound import KEYS

from .features import BELOW, BINS, HOP, LEAD, PER_OCTAVE, SPECTRA

# key offsets heard by each key, and frames (times the dilation) by each frame
OFFSETS = (-28, -24, -19, -12, -7, -5, -4, -3, -2, -1, 0, 1, 2, 3, 4, 5, 7, 12, 19, 24)
PAST = (-3, -2, -1, 0, 1)
DILATIONS = (1, 1, 2, 2, 1)
# harmonics looked at in each spectrum, sub-frames of the middle and the short one
LONG_AT, MIDDLE_AT, SHORT_AT = (0.5, 1, 1.5, 2, 2.5, 3, 4, 5, 6, 7, 8), (0.5, 1, 2, 3, 4, 5, 6, 8), (1, 2, 3, 4, 6, 8)
MIDDLE_FRAMES, SHORT_FRAMES = (-1, 0), (-2, -1, 0, 1)
BANDS = 8


def taps():
    """[(spectrum, sub-frame, bins from the key's own)]"""

    def bins(harmonic):
        return round(PER_OCTAVE * math.log2(harmonic))

    out = [(0, 0, bins(h) + j) for h in LONG_AT for j in (-1, 0, 1)] + [(0, 0, -2), (0, 0, 2)]
    out += [(1, frame, bins(h) + j) for frame in MIDDLE_FRAMES for h in MIDDLE_AT for j in (-1, 1)]
    return out + [(2, frame, bins(h)) for frame in SHORT_FRAMES for h in SHORT_AT]


class Gather(nn.Module):
    """Spectra → (taps, frames, B, KEYS) and means of eight bands (bands, frames, B), both less 1.5."""

    def __init__(self):
        super().__init__()
        self.channels = [(0, 0)] + [(1, i) for i in MIDDLE_FRAMES] + [(2, i) for i in SHORT_FRAMES]
        self.taps, self.bands = len(taps()), BANDS * len(self.channels)
        key = 3 * torch.arange(KEYS)[None] + BELOW
        for n, channel in enumerate(self.channels):
            offsets = torch.tensor([b for k, i, b in taps() if (k, i) == channel])[:, None]
            self.register_buffer(f"index{n}", (key + offsets).reshape(-1), persistent=False)
        means = torch.zeros(BINS, BANDS)
        for i in range(BANDS):
            low, high = i * BINS // BANDS, (i + 1) * BINS // BANDS
            means[low:high, i] = 1 / (high - low)
        self.register_buffer("means", means, persistent=False)

    def forward(self, spectra, frames):
        gathered, bands = [], []
        for n, (which, frame) in enumerate(self.channels):
            hop = SPECTRA[which][1]
            step, start = HOP // hop, LEAD // hop + frame
            x = spectra[which][:, start : start + step * (frames - 1) + 1 : step] - 1.5
            picked = x[..., getattr(self, f"index{n}")].view(x.shape[0], frames, -1, KEYS)
            gathered.append(picked.permute(2, 1, 0, 3))
            bands.append((x @ self.means).permute(2, 1, 0))
        return torch.cat(gathered), torch.cat(bands)


_shifts = {}


def key_shifts(device):
    """(OFFSETS, KEYS · KEYS): which key is heard by which at each offset."""
    if ("keys", device) not in _shifts:
        e = torch.zeros(len(OFFSETS), KEYS, KEYS)
        for j, offset in enumerate(OFFSETS):
            k = torch.arange(max(0, -offset), min(KEYS, KEYS - offset))
            e[j, k + offset, k] = 1
        _shifts["keys", device] = e.to(device).reshape(len(OFFSETS), -1)
    return _shifts["keys", device]


def time_shifts(frames, dilation, device):
    """(PAST, frames · frames): which frame is heard by which."""
    name = (frames, dilation, device)
    if name not in _shifts:
        e = torch.zeros(len(PAST), frames, frames)
        for j, past in enumerate(PAST):
            by = past * dilation
            t = torch.arange(max(0, -by), min(frames, frames - by))
            e[j, t, t + by] = 1
        _shifts[name] = e.to(device).reshape(len(PAST), -1)
    return _shifts[name]


class Norm(nn.BatchNorm1d):
    """Batch normalisation of each channel over all else, written out: the library's gives a channel one multiprocessor."""

    def forward(self, x):
        rows = x.reshape(x.shape[0], -1)
        if self.training:
            variance, mean = torch.var_mean(rows.float(), 1, correction=0)
            with torch.no_grad():
                self.running_mean.lerp_(mean, self.momentum)
                self.running_var.lerp_(variance, self.momentum)
        else:
            variance, mean = self.running_var, self.running_mean
        scale = self.weight * torch.rsqrt(variance + self.eps)
        return torch.addcmul((self.bias - mean * scale)[:, None], rows, scale[:, None]).to(x.dtype).view(x.shape)


class Block(nn.Module):
    """x + ReLU(norm(W · keys(time(x)))): two depthwise convolutions and one dense product."""

    def __init__(self, width, dilation):
        super().__init__()
        self.dilation = dilation
        in_time, in_keys = torch.randn(width, len(PAST)) * 0.15, torch.randn(width, len(OFFSETS)) * 0.15
        in_time[:, PAST.index(0)] += 1
        in_keys[:, OFFSETS.index(0)] += 1
        self.t, self.k = nn.Parameter(in_time), nn.Parameter(in_keys)
        self.w = nn.Parameter(torch.randn(width, width) * (1.4 / width) ** 0.5)
        self.bn = Norm(width)

    def forward(self, x, mask):
        width, frames, clips, _ = x.shape
        along = (self.t @ time_shifts(frames, self.dilation, x.device)).view(width, frames, frames)
        across = (self.k @ key_shifts(x.device)).view(width, KEYS, KEYS)
        u = (along @ x.reshape(width, frames, clips * KEYS)).view(width, frames * clips, KEYS) @ across
        y = F.relu(self.bn(self.w @ u.view(width, -1))).view(x.shape)
        return x + (y if mask is None else y * mask)


class Listener(nn.Module):
    """Spectra → (4, frames, B, KEYS): onset logit, moment in frames, level / 6 dB, sounding logit. `mask` (1, 1, B, KEYS): keys
    that are evaluated; the others count as zero."""

    def __init__(self, width=48):
        super().__init__()
        self.width, self.gather = width, Gather()
        self.stem = nn.Parameter(torch.randn(width, self.gather.taps) * (2 / self.gather.taps) ** 0.5)
        self.band = nn.Parameter(torch.randn(width, self.gather.bands) * 0.02)
        self.pos = nn.Parameter(torch.zeros(width, 1, 1, KEYS))
        self.bn = Norm(width)
        self.b = nn.ModuleList([Block(width, dilation) for dilation in DILATIONS])
        self.out = nn.Linear(width, 4)
        nn.init.normal_(self.out.weight, 0, 0.1)
        self.out.bias.data[0] = -4

    def forward(self, spectra, frames, mask=None):
        x, bands = self.gather(spectra, frames)
        common = (self.band @ bands.reshape(bands.shape[0], -1)).view(self.width, frames, -1, 1)
        x = (self.stem @ x.reshape(x.shape[0], -1)).view(self.width, frames, -1, KEYS)
        x = F.relu(self.bn(x + self.pos.to(x.dtype) + common))
        if mask is not None:
            mask = mask.to(x.dtype)
            x = x * mask
        for block in self.b:
            x = block(x, mask)
        out = self.out.weight @ x.reshape(self.width, -1) + self.out.bias[:, None]
        return out.view(4, frames, -1, KEYS)
