"""Power of the sound at given frequencies about given moments: windows times cosines and sines (CUDA kernel, or plain torch)."""

import numpy as np
import torch

from sound import RATE

WIDTH = 2.2e6  # a window is at most this many samples over its frequency: half its lobe is 2 % of it
THREADS = 128
KERNEL = r"""
extern "C" __global__ void project(const float* y, const long long* place, const float* hz, const int* offsets,
    float* out, int strips, int size) {
  const int strip = blockIdx.x, q = blockIdx.y, lane = threadIdx.x;
  const float f = hz[(long long)q * strips + strip];
  const float span = fminf((float)size, 2.2e6f / f);
  const int reach = min(size / 2, (int)ceilf(span * 0.5f));
  const float turn = 2.f * f / 22050.f, bend = 2.f / span, scale = 4.f / span;
  const float* at = y + place[q];
  float re[FRAMES], im[FRAMES];
  #pragma unroll
  for (int j = 0; j < FRAMES; j++) { re[j] = 0.f; im[j] = 0.f; }
  for (int m = lane - reach; m < reach; m += THREADS) {
    if (fabsf((float)m) >= span * 0.5f) continue;
    const float w = (0.5f + 0.5f * cospif(bend * m)) * scale;
    float s, c;
    sincospif(turn * m, &s, &c);
    c *= w; s *= w;
    #pragma unroll
    for (int j = 0; j < FRAMES; j++) {
      const float v = at[offsets[j] + m];
      re[j] += v * c; im[j] += v * s;
    }
  }
  __shared__ float sums[2 * FRAMES];
  if (lane < 2 * FRAMES) sums[lane] = 0.f;
  __syncthreads();
  #pragma unroll
  for (int j = 0; j < FRAMES; j++) {
    float a = re[j], b = im[j];
    for (int d = 16; d > 0; d >>= 1) { a += __shfl_down_sync(0xffffffffu, a, d); b += __shfl_down_sync(0xffffffffu, b, d); }
    if ((lane & 31) == 0) { atomicAdd(&sums[j], a); atomicAdd(&sums[FRAMES + j], b); }
  }
  __syncthreads();
  if (lane < FRAMES) {
    const float a = sums[lane], b = sums[FRAMES + lane];
    out[((long long)q * FRAMES + lane) * strips + strip] = a * a + b * b;
  }
}"""
_kernels = {}


def by_kernel(flat, place, hz, size, offsets):
    """flat: all clips in one line; place (Q,) of the moments in it; hz (Q, strips) → (Q, offsets, strips)"""
    import cupy

    frames = len(offsets)
    if 2 * frames > THREADS:
        raise ValueError(f"{frames} frames are more than the kernel sums at once")
    if frames not in _kernels:
        code = KERNEL.replace("FRAMES", str(frames)).replace("THREADS", str(THREADS))
        _kernels[frames] = cupy.RawKernel(code, "project")
    out = torch.empty(len(place), frames, hz.shape[1], device=flat.device)
    if len(place) == 0:
        return out
    where = torch.tensor(offsets, device=flat.device, dtype=torch.int32)
    given = [flat, place.contiguous(), hz.float().contiguous(), where, out]
    with cupy.cuda.ExternalStream(torch.cuda.current_stream().cuda_stream):
        arrays = tuple(cupy.asarray(one) for one in given)
        _kernels[frames]((hz.shape[1], len(place)), (THREADS,), (*arrays, np.int32(hz.shape[1]), np.int32(size)))
    return out


def plainly(flat, place, hz, size, offsets):
    """The same in torch, 256 questions at a time."""
    half = size // 2
    m = torch.arange(-half, half, device=flat.device, dtype=torch.float32)[None, :, None]
    shifts = torch.tensor(offsets, device=flat.device)[:, None] + torch.arange(-half, half, device=flat.device)[None]
    out = []
    for start in range(0, len(place), 256):
        f = hz[start : start + 256]
        span = (WIDTH / f).clamp(max=size)[:, None]
        window = (0.5 + 0.5 * torch.cos(6.2831853 * m / span)) * (m.abs() < span / 2) * 4 / span
        turn = (6.2831853 / RATE) * f[:, None] * m
        pieces = flat[place[start : start + 256, None, None] + shifts[None]]
        real, imaginary = torch.bmm(pieces, window * torch.cos(turn)), torch.bmm(pieces, window * torch.sin(turn))
        out.append(real**2 + imaginary**2)
    return torch.cat(out) if out else torch.zeros(0, len(offsets), hz.shape[1], device=flat.device)


def agrees(device):
    """Does the kernel say what plain torch says?"""
    chance = torch.Generator().manual_seed(1)
    flat = torch.randn(90000, generator=chance).to(device)
    place = torch.randint(30000, 60000, (50,), generator=chance).to(device)
    hz = (torch.rand(50, 24, generator=chance) * 9000 + 30).to(device)
    for size, offsets in ((4096, [-3072, 0, 1024]), (256, [-1280, 128])):
        one, other = (how(flat, place, hz, size, offsets) for how in (by_kernel, plainly))
        if not torch.allclose(one, other, rtol=1e-2, atol=1e-5):
            return False
    return True
