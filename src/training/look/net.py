"""The network of the closer look, and its loss (torch)."""

import torch
import torch.nn as nn
import torch.nn.functional as F

from .features import COMPARED, HELD, LONG, MIDDLE, SHORT, STRIPS, levels
from .questions import WRITTEN

TOLD = 80
SIZES = {
    "small": dict(channels=16, mixed=32, seen=96, written=32, told=48, joined=64, last=32, compared=64, compressed=32),
    "middle": dict(
        channels=24, mixed=48, seen=160, written=48, told=64, joined=128, last=48, compared=128, compressed=48
    ),
    "large": dict(
        channels=32, mixed=64, seen=256, written=64, told=96, joined=192, last=64, compared=192, compressed=64
    ),
}
SQUARED, MOST_AWAY = 0.5, 6.0
HALVED = [(count - 3) // 2 + 1 for count in (MIDDLE[3], SHORT[3])]


class Look(nn.Module):
    """Views → channels by two layers over each frame; the middle and the short view are halved in time; all frames are joined
    with what is written and what the blind ear said. Then once more beside twins and hands apart."""

    def __init__(self, **sizes):
        super().__init__()
        self.sizes = sizes
        channels, mixed, last = sizes["channels"], sizes["mixed"], sizes["last"]
        seen, told = sizes["seen"], sizes["told"]
        self.mixed = nn.ModuleList(nn.Linear(STRIPS, mixed) for _ in range(4))
        self.channels = nn.ModuleList(nn.Linear(mixed, channels) for _ in range(4))
        self.halved = nn.ModuleList(nn.Conv1d(channels, channels, 3, stride=2) for _ in range(2))
        self.seen = nn.Linear((LONG[3] + sum(HALVED) + HELD[3]) * channels, seen)
        self.written = nn.Linear(WRITTEN, sizes["written"])
        self.told = nn.Linear(TOLD, told)
        self.joined = nn.Linear(seen + sizes["written"] + told, sizes["joined"])
        self.last = nn.Linear(sizes["joined"], last)
        self.out = nn.Linear(last, 3)
        self.compared = nn.Linear(seen + 2 * told + 2 + 4 * COMPARED + 2, sizes["compared"])
        self.compressed = nn.Linear(sizes["compared"], sizes["compressed"])
        self.added = nn.Linear(sizes["compressed"], last, bias=False)
        nn.init.zeros_(self.added.weight)

    def forward(self, views, written, said, group, groups, alone, other, own):
        """→ (Q, 3) by itself, and beside its twins (`group` says whose twin is whose) and hands apart: `alone` (M+1, COMPARED),
        the last row empty; `other`, `own` (Q,) say which row shows the other hand's keys and the own hand's alone."""
        read = []
        for i, seen in enumerate(views):
            u = F.relu(self.channels[i](F.relu(self.mixed[i](seen))))
            if i in (1, 2):
                u = F.relu(self.halved[i - 1](u.transpose(1, 2))).transpose(1, 2)
            read.append(u.flatten(1))
        seen = F.relu(self.seen(torch.cat(read, 1)))
        told = F.relu(self.told(said))
        joined = torch.cat([seen, F.relu(self.written(written)), told], 1)
        last = self.last(F.relu(self.joined(joined)))
        # what the blind ear said stands unless the look says otherwise
        word = F.pad(said[:, :2], (0, 1))
        first = self.out(F.relu(last)) + word
        # where a twin was struck, and where it was not: how far is this from it, at each frequency, while it sounds?
        struck = torch.sigmoid(first[:, :1]).detach()
        now = levels(views[0], views[1])
        means, twins = others(torch.cat([struck, now * struck, now * (1 - struck), told], 1), group, groups)
        share, at_struck, at_silent, twin_told = means.split([1, COMPARED, COMPARED, told.shape[1]], 1)
        known = [(which < len(alone) - 1).float()[:, None] for which in (other, own)]
        apart = [(now - alone[which]) * has for which, has in zip((other, own), known)]
        beside = [seen, told, now * share - at_struck, now * (twins - share) - at_silent, twin_told, share, twins]
        z = F.relu(self.compressed(F.relu(self.compared(torch.cat(beside + apart + known, 1)))))
        any_known = torch.maximum(twins, torch.maximum(*known))
        return first, self.out(F.relu(last + self.added(z * any_known))) + word


def others(x, group, groups):
    """Rows → the mean of the other rows of the same group (0 where there are none), and whether there are any."""
    ones = torch.ones(len(x), 1, device=x.device)
    count = torch.zeros(groups, 1, device=x.device).index_add(0, group, ones)[group] - 1
    total = torch.zeros(groups, x.shape[1], device=x.device).index_add(0, group, x)[group] - x
    has = (count > 0.5).float()
    return total / count.clamp(min=1) * has, has


def loss(out, struck, late, weight):
    """out: log odds, moment, ln of its spread; `late` in units of 10 ms; weight 0: padding. → whether, when"""
    whether = F.binary_cross_entropy_with_logits(out[:, 0], struck, reduction="none") * weight
    spread = out[:, 2].clamp(-3, 3)
    there = struck * (weight > 0)
    away = (late - out[:, 1]).abs()
    # by its spread a small error counts where it is sure, by its square a large one where it is not
    when = (away * torch.exp(-spread) + spread + SQUARED * away.clamp(max=MOST_AWAY) ** 2) * there
    return whether.sum() / (weight > 0).sum().clamp(min=1), when.sum() / there.sum().clamp(min=1)
