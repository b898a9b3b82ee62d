"""What lies between piano and microphone: open strings, room, talk, noise, hum, microphone, level control, coder, clipping.

Each clip is either like a home (`mild`) or anything up to a hall, talk as loud as the playing and noise 4 dB below it.
"""

import math

import torch
import torch.nn.functional as F

from . import KEYS, LOWEST, RATE

TAIL = int(1.7 * RATE)


def pedal_bank(device, size, banks=8, seed=4):
    """Spectra (banks, size/2+1) of what undamped strings answer: a decaying tone on every partial of every key."""
    chance = torch.Generator().manual_seed(seed)
    count = int(1.7 * RATE)
    t = torch.arange(count, device=device) / RATE
    out = []
    for _ in range(banks):
        y = torch.zeros(count, device=device)
        for midi in range(LOWEST, LOWEST + KEYS):
            partial = torch.arange(1, 9)
            tuned = 440 * 2 ** ((midi - 69) / 12 + float(torch.randn(1, generator=chance)) * 3 / 1200)
            hz = tuned * partial * (1 + 2e-4 * partial * partial).sqrt()
            hz = hz[hz < 8000]
            if len(hz) == 0:
                continue
            level = torch.exp(torch.randn(len(hz), generator=chance) * 0.7) / partial[: len(hz)] ** 0.5
            phase = torch.rand(len(hz), generator=chance) * 6.28
            fall = 6.9 / (float(torch.rand(1, generator=chance) * 2 + 0.6) * 6 * 2 ** (-(midi - 36) / 18))
            waves = torch.sin(6.283185 * hz.to(device)[:, None] * t + phase.to(device)[:, None])
            y += (level.to(device)[:, None] * waves).sum(0) * torch.exp(-fall * t)
        y *= (t > 0.004) * ((1.7 - t) / 0.2).clamp(0, 1)
        out.append(torch.fft.rfft(y, size))
    bank = torch.stack(out)
    return bank / bank.abs().pow(2).mean(1, keepdim=True).sqrt()


def _rms(x):
    return x.pow(2).mean(1, keepdim=True).sqrt().clamp(min=1e-6)


def _active(x):
    """RMS over the tenths of a second that hold playing."""
    power = F.avg_pool1d(x.pow(2)[:, None], 2205, 1102)[:, 0]
    active = (power > 0.01 * power.max(1, keepdim=True)[0]).float()
    return ((power * active).sum(1, keepdim=True) / active.sum(1, keepdim=True).clamp(min=1)).sqrt().clamp(min=1e-4)


def _coder(y, chance, draws_low=4.0, draws_high=22.0):
    """Quantisation noise and holes band by band, like a lossy coder at a low rate."""
    count, length = y.shape
    device = y.device
    size = chance.choice([512, 1024, 2048])
    window = torch.hann_window(size, device=device).sqrt()
    spectrum = torch.stft(y, size, size // 2, window=window, return_complex=True)
    hz = torch.arange(size // 2 + 1, device=device) * RATE / size
    bark = (13 * torch.atan(0.00076 * hz) + 3.5 * torch.atan((hz / 7500) ** 2)).floor().long()
    bands = torch.zeros(int(bark.max()) + 1, size // 2 + 1, device=device)
    bands[bark, torch.arange(size // 2 + 1, device=device)] = 1
    energy = (bands @ spectrum.abs().pow(2)) / bands.sum(1)[:, None].clamp(min=1)
    level = (bands.T @ energy).sqrt()
    uniform = torch.rand(2, count, 1, 1, device=device)
    below = uniform[0] * (draws_high - draws_low) + draws_low - 10 * uniform[1] * hz[None, :, None] / RATE * 2
    step = (level * 10 ** (-below / 20) * 3.46).clamp(min=1e-9)
    coded = torch.complex((spectrum.real / step).round(), (spectrum.imag / step).round()) * step
    return torch.istft(coded, size, size // 2, window=window, length=length)


def _quick_size(least):
    """The next length whose only factors are 2, 3 and 5, a multiple of 8."""
    sizes = (2**a * 3**b * 5**c for a in range(3, 20) for b in range(8) for c in range(6))
    return min(size for size in sizes if size >= least)


class Room:
    """Made once; called with a batch of dry clips. `aloud`: how often somebody counts aloud."""

    def __init__(self, length, device, aloud=0.25):
        self.length, self.aloud = length, aloud
        self.size = _quick_size(length + TAIL)
        self.device = device
        self.pedals = pedal_bank(device, self.size)
        self.hz = torch.arange(self.size // 2 + 1, device=device)[None] * RATE / self.size + 1e-3
        self.time = torch.arange(length, device=device)[None] / RATE

    def __call__(self, y, pedal, talk, chance, draws, mild):
        """y (clips, length); pedal, mild (clips, 1) 0 or 1; talk: one long line of speech."""
        y = self._open_strings(y, pedal)
        hard = 1 - mild
        level = _active(y).clamp(min=0.02)
        y = y + self._speech(talk, level, draws, 0.14, -26, 3) * hard
        y = self._filtered(y, self._echo(draws, mild))
        level = _active(y)
        y = y + self._noise(y, draws, mild) * level + self._hum(draws, mild) * level
        # Counting aloud belongs to a home.
        y = y + self._speech(talk, level, draws, self.aloud, -18, 3)
        y = self._filtered(y, self._microphone(draws, hard))
        y = self._level_control(y, chance, draws, hard)
        y = y / y.abs().max(1, keepdim=True)[0].clamp(min=1e-6)
        y = self._clipped(y, draws, hard)
        y = self._coded(y, chance, draws, mild)
        gain = 10 ** (draws.place_uniform(-55, 0) / 20)
        coarse = draws.place_chance(0.3) * hard
        return torch.where(coarse > 0, (y * gain * 32767).round() / (32767 * gain), y)

    def _filtered(self, y, response):
        return torch.fft.irfft(torch.fft.rfft(y, self.size) * response, self.size)[:, : self.length]

    def _open_strings(self, y, pedal):
        which = torch.randint(0, len(self.pedals), (len(y),), device=self.device)
        answer = self._filtered(y, self.pedals[which])
        below = torch.rand(len(y), 1, device=self.device) * 21 + 11
        return y + answer / _rms(answer) * _rms(y) * 10 ** (-below / 20) * pedal

    def _speech(self, talk, level, draws, probability, low, high):
        start = torch.randint(0, len(talk) - self.length, (draws.count, 1), device=self.device)
        said = talk[start + torch.arange(self.length, device=self.device)[None]]
        return said * level * 10 ** (draws.own_uniform(low, high) / 20) * draws.own_chance(probability)

    def _echo(self, draws, mild):
        """The room: six early echoes and a decaying tail; the same place has the same."""
        count = int(1.4 * RATE)
        t = torch.arange(count, device=self.device)[None] / RATE
        decay = torch.where(
            mild > 0, draws.place_uniform(0.15, 0.6), torch.exp(draws.place_uniform(math.log(0.12), math.log(1.9)))
        )
        direct = torch.where(mild > 0, draws.place_uniform(0, 14), draws.place_uniform(-6, 16))
        noise = torch.randn(draws.places, count, device=self.device)[draws.place]
        tail = noise * 10 ** (-3 * t / decay) * (t > draws.place_uniform(0.001, 0.008))
        spectrum = torch.fft.rfft(tail, self.size)
        spectrum = spectrum / (1 + (self.hz / draws.place_uniform(1500, 8000)) ** 2).sqrt() * (self.hz / (self.hz + 60))
        spectrum = spectrum / spectrum.abs().pow(2).mean(1, keepdim=True).sqrt()
        spectrum = spectrum * 10 ** (-direct / 20) * draws.place_chance(0.9)
        first = torch.zeros(draws.count, count, device=self.device)
        first[:, 0] = 1
        for _ in range(6):
            delay = draws.place_integer(10, int(0.025 * RATE))
            sign = torch.sign(draws.place_normal())
            first.scatter_add_(1, delay, sign * 10 ** (-draws.place_uniform(7, 22) / 20) * draws.place_chance(0.8))
        return torch.fft.rfft(first, self.size) + spectrum

    def _microphone(self, draws, hard):
        """Tilt, bumps, ends of the band; now and then a telephone's."""
        octave = torch.log2(self.hz)
        gain = draws.place_uniform(-2.5, 2.5) * (octave - 9.5)
        for _ in range(6):
            centre, width = draws.place_uniform(5.5, 13.5), draws.place_uniform(0.08, 1.2)
            gain = gain + draws.place_normal() * 3.5 * torch.exp(-0.5 * ((octave - centre) / width) ** 2)
        low = torch.exp(draws.place_uniform(math.log(30), math.log(300)))
        high = torch.exp(draws.place_uniform(math.log(3000), math.log(14000)))
        phone = draws.place_chance(0.6)
        response = 10 ** (gain / 20)
        response = response * (1 - phone + phone / (1 + (low / self.hz) ** 4).sqrt())
        response = response * (1 - phone + phone / (1 + (self.hz / high) ** 4).sqrt())
        response = response * (1 - draws.place_chance(0.2) * (self.hz > draws.place_uniform(3400, 9000)).float())
        call = draws.place_chance(0.12) * hard
        return response * (1 - call * ((self.hz < 250) | (self.hz > 3500)).float() * 0.999)

    def _noise(self, y, draws, mild):
        count = self.length // 2 + 1
        slope = torch.arange(1, count + 1, device=self.device).float().clamp(min=20 * self.length / RATE)[None]
        spectrum = torch.fft.rfft(torch.randn_like(y)) / slope ** draws.place_uniform(0, 0.8)
        noise = torch.fft.irfft(spectrum, self.length)
        below = torch.where(mild > 0, draws.place_uniform(25, 58), draws.place_uniform(4, 62))
        swell = draws.place_chance(0.2) * draws.place_uniform(0, 0.8)
        swell = 1 + swell * torch.sin(6.283 * draws.place_uniform(0.3, 6) * self.time)
        return noise / noise.std(1, keepdim=True) * 10 ** (-below / 20) * swell

    def _hum(self, draws, mild):
        mains = 50 + 10 * draws.place_chance(0.4)
        waves = sum(
            draws.place_uniform(0, 1) ** 2 * torch.sin(6.283185 * mains * k * self.time + draws.own_uniform(0, 6))
            for k in (1, 2, 3, 4, 5, 7, 9)
        )
        below = torch.where(mild > 0, draws.place_uniform(25, 50), draws.place_uniform(4, 50))
        return waves * 10 ** (-below / 20) * draws.place_chance(0.18)

    def _level_control(self, y, chance, draws, hard):
        level = _active(y)
        span = chance.choice([1102, 4410, 11025])
        total = F.pad(y.double().pow(2).cumsum(1), (span, 0))
        now = ((total[:, span:] - total[:, :-span]) / span).clamp(min=0).sqrt().float() + 0.05 * level
        on = draws.place_chance(0.18) * hard
        return y * (1 - on + on * (level / now) ** draws.place_uniform(0.3, 0.9))

    def _clipped(self, y, draws, hard):
        on = draws.place_chance(0.24) * hard
        top, soft = draws.place_uniform(0.12, 0.6), draws.place_chance(0.3)
        cut = torch.where(soft > 0, top * torch.tanh(y / top), torch.maximum(torch.minimum(y, top), -top))
        return torch.where(on > 0, cut, y)

    def _coded(self, y, chance, draws, mild):
        """A fifth of the clips, the hard ones first."""
        rank = draws._share(torch.rand(draws.places, 1, device=self.device)) + mild * 2
        chosen = torch.argsort(rank[:, 0])[: max(1, len(y) // 5)]
        y[chosen] = _coder(y[chosen], chance)
        return y
