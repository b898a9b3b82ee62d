"""Events → sound: rows of the bank read at their own speed, with their own level and damping (CUDA kernel, or plain torch)."""

import numpy as np
import torch

# samples of ramp before an onset
PRE = 110.25
KERNEL = r"""
extern "C" __global__ void render(const short* w, const int* on, const int* clip, const int* row, const double* t,
    const float* ratio, const float* amp, const float* off, const float* rel, float* y, int n, int L) {
  int e = blockIdx.y;
  int j = blockIdx.x * blockDim.x + threadIdx.x;
  double te = t[e];
  long long s = (long long)floor(te - 110.25) + j;
  if (s < 0 || s >= n) return;
  float tn = (float)((double)s - te);
  float pos = on[row[e]] + tn * ratio[e];
  if (pos < 1.f || pos >= L - 3) return;
  int i = (int)pos;
  float f = pos - i;
  const short* p = w + (long long)row[e] * L + i;
  float a = p[-1], b = p[0], c = p[1], d = p[2];
  float v = b + .5f * f * (c - a + f * (2.f * a - 5.f * b + 4.f * c - d + f * (3.f * (b - c) + d - a)));
  float env = fminf(1.f, fmaxf(0.f, (tn + 110.25f) / 22.f));
  if (tn > off[e]) {
    float q = expf(-(tn - off[e]) * rel[e]);
    if (q < 1e-4f) return;
    env *= q;
  }
  atomicAdd(y + (long long)clip[e] * n + s, v * env * amp[e] * (1.f / 32768.f));
}"""
_kernel = None


def render(bank, onsets, events, clips, length):
    """events (N, 7): clip, row, onset sample, speed, gain, damped after samples, decay a sample → (clips, length)"""
    events = torch.as_tensor(events, device=bank.device)
    if len(events) == 0:
        return torch.zeros(clips, length, device=bank.device)
    if bank.device.type == "cuda":
        return _by_kernel(bank, onsets, events, clips, length)
    return _plainly(bank, onsets, events, clips, length)


def _by_kernel(bank, onsets, events, clips, length):
    global _kernel
    import cupy

    if _kernel is None:
        _kernel = cupy.RawKernel(KERNEL, "render")
    y = torch.zeros(clips, length, device=bank.device)
    whole = [events[:, c].int().contiguous() for c in (0, 1)]
    parts = [events[:, c].float().contiguous() for c in (3, 4, 5, 6)]
    given = [bank, onsets, *whole, events[:, 2].double().contiguous(), *parts, y]
    size = bank.shape[1]
    with cupy.cuda.ExternalStream(torch.cuda.current_stream().cuda_stream):
        arrays = tuple(cupy.asarray(one) for one in given)
        _kernel((size // 1024 + 2, len(events)), (1024,), (*arrays, np.int32(length), np.int32(size)))
    return y


def _plainly(bank, onsets, events, clips, length):
    size = bank.shape[1]
    y = torch.zeros(clips * length, device=bank.device)
    index = torch.arange(size + 400, device=bank.device)[None]
    for start in range(0, len(events), 64):
        part = events[start : start + 64]
        row, at = part[:, 1].long(), part[:, 2:3].double()
        sample = torch.floor(at - PRE).long() + index
        since = (sample - at).float()
        place = onsets[row].float()[:, None] + since * part[:, 3:4].float()
        inside = (sample >= 0) & (sample < length) & (place >= 1) & (place < size - 3)
        left = place.clamp(1, size - 4).floor().long()
        f = place - left
        x = bank[row].float()
        a, b, c, d = [torch.gather(x, 1, left + shift) for shift in (-1, 0, 1, 2)]
        value = b + 0.5 * f * (c - a + f * (2 * a - 5 * b + 4 * c - d + f * (3 * (b - c) + d - a)))
        fall = torch.exp(-(since - part[:, 5:6].float()).clamp(min=0) * part[:, 6:7].float())
        gain = ((since + PRE) / 22).clamp(0, 1) * fall * part[:, 4:5].float() / 32768
        flat = torch.where(inside, sample + part[:, 0:1].long() * length, torch.zeros_like(sample))
        y.index_add_(0, flat.reshape(-1), (value * gain * inside).reshape(-1))
    return y.view(clips, length)
