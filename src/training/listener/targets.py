"""What the blind listener is trained towards, and its loss (torch)."""

import torch
import torch.nn.functional as F

from sound import KEYS, LOWEST, RATE

from .features import HOP

WIDTH = 0.6  # of the bump about an onset, frames
GHOSTS = (12, 19, 24, 28, -12, -19, -24)  # relatives of a struck key that are taken for struck
GHOST_WEIGHT = 1.5
# how much more a struck cell weighs: 4 believes too much, orders worse and is less exact (README.md)
STRUCK_WEIGHT = 1


def targets(struck, clips, count):
    """struck (N,5): clip, onset s, midi, level, release s → dict of (frames, clips, KEYS): onset, moment, where moment and level
    count, level, sounding"""
    device = struck.device
    clip, key = struck[:, 0].long(), struck[:, 2].long() - LOWEST
    centre = struck[:, 1] * RATE / HOP
    size = count * clips * KEYS
    frame = centre.round().long()[:, None] + torch.arange(-3, 4, device=device)[None]
    apart = centre[:, None].float() - frame.float()
    bump = torch.exp(-0.5 * (apart / WIDTH) ** 2)
    inside = (frame >= 0) & (frame < count)
    cell = (frame.clamp(0, count - 1) * clips + clip[:, None]) * KEYS + key[:, None]
    cell, bump, apart = cell[inside], bump[inside], apart[inside]
    onset = torch.zeros(size, device=device).scatter_reduce_(0, cell, bump, "amax")
    best = bump >= onset[cell] - 1e-6

    def spread(values):
        out = torch.zeros(size, device=device)
        out[cell[best]] = values[best]
        return out

    level = (struck[:, 3:4].float().expand(-1, 7)[inside]) / 6
    begun = torch.zeros((count + 1) * clips * KEYS, device=device)
    start, end = centre.round().long().clamp(0, count), (struck[:, 4] * RATE / HOP).round().long().clamp(0, count)
    one = torch.ones(len(struck), device=device)
    begun.scatter_add_(0, (start * clips + clip) * KEYS + key, one)
    begun.scatter_add_(0, (torch.maximum(start, end) * clips + clip) * KEYS + key, -one)
    sounding = (begun.view(count + 1, clips, KEYS)[:count].cumsum(0) > 0.5).float()
    shaped = dict(onset=onset, moment=spread(apart), counts=spread((apart.abs() <= 1.5).float()), level=spread(level))
    return {**{name: value.view(count, clips, KEYS) for name, value in shaped.items()}, "sounding": sounding}


def loss(out, target, mask):
    """out (4, frames, clips, KEYS), mask (1, 1, clips, KEYS) → onset, moment, level, sounding"""
    onset, cross = target["onset"], F.binary_cross_entropy_with_logits
    near = F.max_pool2d(onset.permute(1, 2, 0).unsqueeze(1), (1, 3), 1, (0, 1))[:, 0].permute(2, 0, 1)
    ghost = torch.zeros_like(onset)
    for by in GHOSTS:
        here, there = (slice(by, None), slice(None, -by)) if by > 0 else (slice(None, by), slice(-by, None))
        ghost[..., here] = torch.maximum(ghost[..., here], near[..., there])
    every = mask[0].expand_as(onset)
    counts = target["counts"] * every
    strikes = counts.sum().clamp(min=1)
    weight = (1 + STRUCK_WEIGHT * onset) * (1 + GHOST_WEIGHT * ghost) * every
    whether = (cross(out[0], onset, reduction="none") * weight).sum() / strikes
    moment = (counts * (out[1] - target["moment"]).abs()).sum() / strikes
    level = (counts * (out[2] - target["level"]).abs()).sum() / strikes
    sounds = (cross(out[3], target["sounding"], reduction="none") * every).sum() / every.sum().clamp(min=1)
    return whether, moment, level, sounds


def pick(out, full, least=0.1):
    """out (4, frames, clips, KEYS), what the chances of a sure strike's frames sum to → for each clip [(time s, midi, score,
    level dB)], a key at least 60 ms apart"""
    chance = torch.sigmoid(out[0])
    frames, clips = chance.shape[:2]
    highest = F.max_pool2d(chance.permute(1, 2, 0).unsqueeze(1), (1, 3), 1, (0, 1))[:, 0].permute(2, 0, 1)
    t, b, k = ((chance == highest) & (chance > least)).nonzero(as_tuple=True)
    found = [[] for _ in range(clips)]
    shifts = (-2, -1, 0, 1, 2)
    near = torch.stack([chance[(t + i).clamp(0, frames - 1), b, k] * ((t + i >= 0) & (t + i < frames)) for i in shifts])
    moments = torch.stack([i + out[1][(t + i).clamp(0, frames - 1), b, k] for i in (-1, 0, 1)])
    weights = near[1:4] ** 2
    when = (t + (weights * moments).sum(0) / weights.sum(0)) * HOP / RATE
    score, level = (near.sum(0) / full).clamp(max=1), out[2][t, b, k] * 6
    rows = zip(when.tolist(), b.tolist(), k.tolist(), score.tolist(), level.tolist())
    last = {}
    for sec, clip, key, sure, loud in sorted(rows):
        before = last.get((clip, key))
        if before is not None and sec - found[clip][before][0] < 0.06:
            if sure > found[clip][before][2]:
                found[clip][before] = (sec, key + LOWEST, sure, loud)
            continue
        last[clip, key] = len(found[clip])
        found[clip].append((sec, key + LOWEST, sure, loud))
    return found
