"""The blind listener as it lies in the engine's weights.ts (batch norm merged), and what it says of a key at a moment (torch)."""

import base64
import re

import numpy as np
import torch
import torch.nn.functional as F

from listener.features import features, frames
from listener.net import DILATIONS, HOP, OFFSETS, PAST, Gather, key_shifts, time_shifts
from sound import KEYS, LOWEST, RATE

# semitones from the key asked about to those of which its word is taken along
ASKED = (0, -12, 12, -24, 24, -19, 19, -7, 7, -5, 5, -4, 4, -3, 3, -2, 2, -1, 1)
NEAR = 4  # frames to either side
LEAST = 0.005
WEIGHTS = "../engine/listen/network/weights.ts"


class Blind:
    def __init__(self, device, path=WEIGHTS):
        with open(path) as file:
            text = file.read()
        # what the chances of five frames of a sure onset sum to
        self.full = float(re.search(r"fullSum: ([\d.]+)", text)[1])
        packed = re.search(r"float16Base64:\s*'([^']+)'", text)[1]
        flat = np.frombuffer(base64.b64decode(packed), "<f2").astype(np.float32)
        place = 0

        def take(*shape):
            nonlocal place
            count = int(np.prod(shape))
            part = torch.tensor(flat[place : place + count].reshape(shape), device=device)
            place += count
            return part

        width = 48
        self.gather = Gather().to(device)
        self.stem, self.band = take(width, self.gather.taps), take(width, self.gather.bands)
        self.position = take(KEYS, width)
        self.blocks = [
            (take(width, len(PAST)), take(width, len(OFFSETS)), take(width, width), take(width)) for _ in DILATIONS
        ]
        self.out, self.bias = take(4, width), take(4)
        if place != len(flat):
            raise ValueError(f"{path} holds {len(flat)} weights where the network has {place}")

    @torch.no_grad()
    def __call__(self, y):
        """(B, n) levelled → (4, frames, B, KEYS)"""
        count, width = frames(y.shape[1]), 48
        x, bands = self.gather(features(y), count)
        clips = y.shape[0]
        common = (self.band @ bands.reshape(bands.shape[0], -1)).view(width, count, clips, 1)
        x = (self.stem @ x.reshape(x.shape[0], -1)).view(width, count, clips, KEYS)
        x = F.relu(x + self.position.T[:, None, None, :] + common)
        for (in_time, in_keys, dense, bias), dilation in zip(self.blocks, DILATIONS):
            along = (in_time @ time_shifts(count, dilation, y.device)).view(width, count, count)
            across = (in_keys @ key_shifts(y.device)).view(width, KEYS, KEYS)
            u = (along @ x.reshape(width, count, clips * KEYS)).view(width, count * clips, KEYS) @ across
            x = x + F.relu(dense @ u.reshape(width, -1) + bias[:, None]).view(x.shape)
        return (self.out @ x.reshape(width, -1) + self.bias[:, None]).view(4, count, clips, KEYS)


@torch.no_grad()
def peaks(outputs, full, least):
    """(4, frames, B, KEYS) → (N, 3) clip, s, midi of all that the ear takes for struck with at least this chance, 0..1."""
    frame_count, clips = outputs.shape[1:3]
    chance = torch.sigmoid(outputs[0]).permute(1, 2, 0).reshape(clips * KEYS, 1, frame_count)
    score = F.avg_pool1d(chance, 5, 1, 2) * 5 / full
    highest = F.max_pool1d(chance, 2 * NEAR + 1, 1, NEAR)
    row, _, frame = ((chance == highest) & (score > least)).nonzero(as_tuple=True)
    clip, key = row // KEYS, row % KEYS
    sec = (frame + outputs[1][frame, clip, key]) * HOP / RATE
    return torch.stack([clip.double(), sec.double(), (key + LOWEST).double()], 1).cpu().numpy()


@torch.no_grad()
def said(outputs, full, clip, at, key):
    """(4, frames, B, KEYS) and questions → (Q, len(ASKED), 4): belief, moment less `at` in 10 ms, level / 6 dB, sounding; what
    the ear's candidates say within 90 ms."""
    count, clips = outputs.shape[1:3]
    device = outputs.device
    keys = (key - LOWEST)[:, None] + torch.tensor(ASKED, device=device)[None]
    inside = (keys >= 0) & (keys < KEYS)
    keys = keys.clamp(0, KEYS - 1).long()
    frame = (at.double() / HOP).round().long()[:, None] + torch.arange(-NEAR - 2, NEAR + 3, device=device)[None]
    within = (frame >= 0) & (frame < count)
    frame = frame.clamp(0, count - 1)
    index = (frame[:, None, :] * clips + clip[:, None, None]) * KEYS + keys[:, :, None]

    def take(channel):
        return outputs[channel].reshape(-1)[index]

    chance = torch.sigmoid(take(0)) * within[:, None]
    peak = chance[..., 2:-2].argmax(-1, keepdim=True) + 2

    def beside(values, shift):
        return torch.gather(values, 2, peak + shift)[..., 0]

    near = [beside(chance, shift) for shift in (-2, -1, 0, 1, 2)]
    late, score = take(1), (sum(near) / full).clamp(max=1)
    weights = [one * one for one in near[1:4]]
    spread = frame[:, None, :].expand_as(chance)
    moments = [beside(spread, shift) + beside(late, shift) for shift in (-1, 0, 1)]
    moment = sum(w * m for w, m in zip(weights, moments)) / sum(weights).clamp(min=1e-12)
    apart = (moment * HOP - at[:, None].float()) / RATE * 100
    sure = score.clamp(LEAST, 0.995)
    there = inside & (score > LEAST) & (apart.abs() < 9)
    told = torch.stack([torch.log(sure / (1 - sure)), apart, beside(take(2), 0), torch.sigmoid(beside(take(3), 2))], -1)
    none = torch.tensor([np.log(LEAST / (1 - LEAST)), 0, -3, 0], device=device, dtype=told.dtype)
    return torch.where(there[..., None], told, none)


def usual(told, clip, hand, struck, clips):
    """Mean belief and level of what is heard of each hand of a clip, without the question's own: (Q, 4) own hand, other hand."""
    heard = (struck > 0.5) & (told[:, 0, 0] > -0.85) & (hand >= 0)
    known = hand.clamp(min=0).long()
    index = (clip * 2 + known).long()
    count = torch.zeros(2 * clips, device=told.device).index_add_(0, index, heard.float())
    value = told[:, 0, [0, 2]] * heard[:, None]
    total = torch.zeros(2 * clips, 2, device=told.device).index_add_(0, index, value)
    unknown = torch.tensor([[0.0, -0.5]], device=told.device)

    def mean(which, own):
        left = count[which] - (heard.float() if own else 0)
        sums = total[which] - (value if own else 0)
        return torch.where((left >= 2)[:, None], sums / left.clamp(min=1)[:, None], unknown)

    return torch.cat([mean(index, True), mean(clip.long() * 2 + 1 - known, False)], 1)
