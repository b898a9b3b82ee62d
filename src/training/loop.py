"""What both trainings share: processes that count batches, a thread that renders them, steps as CUDA graphs, pieces."""

import argparse
import math
import os
import queue
import threading
import time

import torch
import torch.multiprocessing as mp

from shelf import Shelf

LAST_SHARE, WARM_UP = 0.01, 300
RENEW_SEC = 100
# held while a step is recorded, which must be all that the GPU is asked for
ALONE = threading.Lock()


def _work(out, make):
    try:
        maker = make()
        while True:
            out.put(maker.batch())
    except Exception as error:
        out.put(error)


class Workers:
    """Processes that put batches into a queue without end; `makers`: one function a process, which makes its maker."""

    def __init__(self, makers):
        self.queue = mp.Queue(2 * len(makers))
        self.processes = [mp.Process(target=_work, args=(self.queue, make), daemon=True) for make in makers]
        for process in self.processes:
            process.start()

    def get(self):
        """The next batch; what went wrong in a process is raised here, where it would else be waited for without end."""
        batch = self.queue.get()
        if isinstance(batch, Exception):
            raise batch
        return batch

    def stop(self):
        for process in self.processes:
            process.terminate()


def tensors(batch):
    """Every tensor of a batch, those of lists among them, in the order of its names."""
    out = []
    for name in sorted(batch):
        value = batch[name]
        out += list(value) if isinstance(value, (list, tuple)) else [value] if torch.is_tensor(value) else []
    return out


class Producer:
    """A thread that makes batches ahead, on CUDA on a stream of its own; the bank's synthetic pianos are renewed now and then."""

    def __init__(self, make, bank, seed, renew_sec, depth=4):
        self.make, self.bank, self.seed, self.renew_sec = make, bank, seed, renew_sec
        self.cuda = bank.device == "cuda"
        self.ready, self.stopped, self.broken = queue.Queue(depth), threading.Event(), None
        self.thread = threading.Thread(target=self._run, daemon=True)
        self.thread.start()

    def get(self):
        """The next batch; what went wrong in the thread is raised here."""
        while True:
            try:
                return self.ready.get(timeout=1)
            except queue.Empty:
                if self.broken is not None:
                    raise self.broken

    def stop(self):
        self.stopped.set()
        self.thread.join(timeout=20)

    def _run(self):
        try:
            if not self.cuda:
                return self._produce(None)
            stream = torch.cuda.Stream()
            with torch.cuda.stream(stream):
                self._produce(stream)
        except Exception as error:
            self.broken = error

    def _produce(self, stream):
        begun, renewals = time.time(), 0
        while not self.stopped.is_set():
            if self.renew_sec and time.time() - begun > self.renew_sec:
                renewals += 1
                with ALONE:
                    self.bank.renew(self.seed * 77 + renewals)
                begun = time.time()
            with ALONE:
                batch = self.make()
                if stream is not None:
                    for value in tensors(batch):
                        value.record_stream(torch.cuda.default_stream())
                    stream.synchronize()
            while not self.stopped.is_set():
                try:
                    self.ready.put(batch, timeout=1)
                    break
                except queue.Full:
                    pass


class Trainee:
    """One network, its optimiser, its mean over the last steps, and on CUDA one graph of a step.

    objective(net, batch) → what is minimised, and its parts (a vector without gradient) for the log."""

    def __init__(self, name, net, objective, parts, rate, mean_rate, device):
        self.name, self.net, self.objective, self.device = name, net, objective, device
        self.most_rate, self.least_mean_rate = rate, mean_rate
        given = torch.tensor(rate, device=device) if device == "cuda" else rate
        self.optimiser = torch.optim.AdamW(net.parameters(), lr=given, weight_decay=1e-4, capturable=device == "cuda")
        self.mean = {name: value.clone() for name, value in net.state_dict().items()}
        self.mean_rate = torch.tensor(1.0, device=device)
        self.losses = torch.zeros(parts, device=device)
        self.steps, self.graph = 0, None

    def step(self, batch):
        total, parts = self.objective(self.net, batch)
        self.optimiser.zero_grad(set_to_none=False)
        total.backward()
        torch.nn.utils.clip_grad_norm_(self.net.parameters(), 1.0)
        self.optimiser.step()
        with torch.no_grad():
            for name, value in self.net.state_dict().items():
                if value.is_floating_point():
                    self.mean[name].lerp_(value, self.mean_rate)
            self.losses += parts

    def set_rate(self, turn):
        """`turn`: share of the whole training that lies behind, 0..1"""
        falling = LAST_SHARE + (1 - LAST_SHARE) * 0.5 * (1 + math.cos(math.pi * turn))
        rate = self.most_rate * falling * min(1.0, (self.steps + 1) / WARM_UP)
        self._set(rate, max(self.least_mean_rate, 1 / (self.steps + 1)))

    def _set(self, rate, mean_rate):
        for group in self.optimiser.param_groups:
            if self.device == "cuda":
                group["lr"].fill_(rate)
            else:
                group["lr"] = rate
        self.mean_rate.fill_(mean_rate)

    def use_mean(self):
        self.net.load_state_dict(self.mean)
        self.net.eval()

    def save(self, folder, minutes):
        def here(values):
            return {name: value.cpu() for name, value in values.items()}

        state = dict(mean=here(self.mean), net=here(self.net.state_dict()), optimiser=self.optimiser.state_dict())
        sizes = getattr(self.net, "sizes", None)
        state |= dict(sizes=sizes, steps=self.steps, minutes=minutes)
        path = os.path.join(folder, self.name + ".pt")
        torch.save(state, path + ".new")
        os.replace(path + ".new", path)

    def load(self, folder):
        """→ minutes of training that lie behind"""
        path = os.path.join(folder, self.name + ".pt")
        if not os.path.exists(path):
            return 0.0
        state = torch.load(path, map_location=self.device, weights_only=False)
        self.net.load_state_dict(state["net"])
        self.optimiser.load_state_dict(state["optimiser"])
        for group in self.optimiser.param_groups:
            group["capturable"] = self.device == "cuda"
        for name, value in state["mean"].items():
            self.mean[name].copy_(value)
        self.steps = state["steps"]
        return state["minutes"]

    def capture(self, static):
        """Records a step on the static batch as a CUDA graph, and leaves network and optimiser as they were."""
        stream = torch.cuda.Stream()
        stream.wait_stream(torch.cuda.current_stream())
        with torch.cuda.stream(stream):
            kept = {name: value.clone() for name, value in self.net.state_dict().items()}
            held = None
            if self.steps > 0:
                state = self.optimiser.state_dict()["state"]
                held = [{name: value.clone() for name, value in state[key].items()} for key in sorted(state)]
            self._set(0.0, 0.0)
            for _ in range(3):
                self.step(static)
            with torch.no_grad():
                for name, value in self.net.state_dict().items():
                    value.copy_(kept[name])
                for index, entry in enumerate(self.optimiser.state.values()):
                    for name, value in entry.items():
                        value.copy_(torch.zeros_like(value) if held is None else held[index][name])
        torch.cuda.current_stream().wait_stream(stream)
        torch.cuda.synchronize()
        self.graph = torch.cuda.CUDAGraph()
        with torch.cuda.graph(self.graph):
            self.step(static)
        self.losses.zero_()
        torch.cuda.synchronize()


def options(description):
    """The arguments that both trainings have."""
    parser = argparse.ArgumentParser(description=description, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--data", required=True)
    parser.add_argument("--out", required=True)
    parser.add_argument("--start", help="folder of an earlier piece's checkpoints; left out: OUT")
    parser.add_argument("--minutes", type=float, default=8.0)
    parser.add_argument("--of", type=float, default=24.0)
    parser.add_argument("--clips", type=int, default=32)
    parser.add_argument("--workers", type=int, default=13)
    parser.add_argument("--evaluate", type=int, default=60, help="batches of each piano kept out; 0: none")
    parser.add_argument("--steps", type=int, default=10**9, help="at most so many, for trying it out")
    parser.add_argument("--synthetic", type=int, default=40, help="synthesised pianos in the bank")
    parser.add_argument(
        "--copies", type=int, default=4, help="voicings of each sampled piano, and strikes of each; 1: as it is"
    )
    parser.add_argument("--again", type=int, default=0, help="steps on earlier batches after each new one")
    parser.add_argument("--shelf", type=int, default=1200, help="earlier batches kept (of the listener 0.1 GB each)")
    parser.add_argument("--renew", type=float, default=RENEW_SEC, help="s to other synthesised pianos; 0: never")
    parser.add_argument("--device", default="cuda" if torch.cuda.is_available() else "cpu")
    parser.add_argument("--seed", type=int, default=1)
    return parser


def clock():
    """→ log(text), which says how many seconds lie behind"""
    begun = time.time()
    return lambda text: print(f"{time.time() - begun:.0f}s {text}", flush=True)


def train(trainees, producer, args, done, log):
    """Steps for `--minutes`, all networks on the same batches; saves now and then and at the end. → minutes done in all"""
    begun, last, steps, waited, since, saved = time.time(), time.time(), 0, 0.0, 0, 0
    static, shelf = None, Shelf(args.seed, args.shelf)
    cuda = args.device == "cuda"
    while True:
        minutes = (time.time() - begun) / 60
        if minutes >= args.minutes or steps >= args.steps:
            break
        before = time.time()
        batch = producer.get()
        waited += time.time() - before
        if cuda and static is None:
            static = _copied(batch)
            with ALONE:
                for one in trainees:
                    one.capture(static)
        for some in (batch, *shelf.earlier(args.again)):
            if cuda:
                torch._foreach_copy_(tensors(static), tensors(some))
            for one in trainees:
                one.set_rate(min(1.0, (done + minutes) / args.of))
                one.graph.replay() if cuda else one.step(some)
                one.steps += 1
            steps, since = steps + 1, since + 1
        if args.again:
            shelf.put(batch)
        if cuda:
            torch.cuda.current_stream().synchronize()
        if since >= 250 or args.steps < 1000:
            parts = [f"{one.name} " + " ".join(f"{v:.4f}" for v in (one.losses / since).tolist()) for one in trainees]
            speed = since / (time.time() - last)
            log(
                f"{trainees[0].steps} {done + minutes:.1f} min {speed:.1f}/s waiting {waited / since * 1000:.0f} ms | "
                + " | ".join(parts)
            )
            for one in trainees:
                one.losses.zero_()
            last, waited, since = time.time(), 0.0, 0
        if steps // 2000 > saved:
            saved += 1
            for one in trainees:
                one.save(args.out, done + minutes)
    done += minutes
    for one in trainees:
        one.save(args.out, done)
    log(f"done: {done:.1f} min, {trainees[0].steps} steps")
    return done


def _copied(batch):
    return {
        name: [one.clone() for one in value] if isinstance(value, (list, tuple)) else value.clone()
        for name, value in batch.items()
        if torch.is_tensor(value) or isinstance(value, (list, tuple))
    }
