"""Reads a checkpoint of the training (torch's zip of one pickle and raw tensors) without torch: only tensors, numbers and
texts come out of it, and nothing that it names is ever called."""

import collections
import pickle
import zipfile

import numpy as np

TYPES = {"FloatStorage": "<f4", "HalfStorage": "<f2", "LongStorage": "<i8", "IntStorage": "<i4", "BoolStorage": "?"}


def read(path):
    with zipfile.ZipFile(path) as archive:
        top = next(name for name in archive.namelist() if name.endswith("data.pkl"))[: -len("data.pkl")]

        def tensor(storage, offset, size, stride, *_):
            kind, key = storage
            flat = np.frombuffer(archive.read(f"{top}data/{key}"), TYPES[kind])
            steps = [step * flat.itemsize for step in stride]
            return np.lib.stride_tricks.as_strided(flat[offset:], size, steps).copy()

        class Reader(pickle.Unpickler):
            def find_class(self, module, name):
                if name == "_rebuild_tensor_v2":
                    return tensor
                if name in TYPES:
                    return name
                if name == "OrderedDict":
                    return collections.OrderedDict
                raise pickle.UnpicklingError(f"{module}.{name} is no part of a checkpoint")

            def persistent_load(self, reference):
                _, kind, key, *_ = reference
                return kind, key

        return Reader(archive.open(f"{top}data.pkl")).load()
